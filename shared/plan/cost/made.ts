import {
  fromTable,
  input,
  type NumberQuantity,
  type QuantityInput,
  type QuantityOptions,
} from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlanContext } from '../context.js';
import type { StopCurve } from './curve.js';

/** What is known when somebody asks when to stop feeding. */
export interface Made {
  readonly context: PlanContext;
  readonly plan: BatchPlan;
  readonly curve: StopCurve;
  readonly allCosts: NumberQuantity;
}

/** What every number of the curve rests on. */
export function restsOn({ context, curve: { longer } }: Made): {
  readonly inputs: readonly QuantityInput[];
  readonly options: QuantityOptions;
} {
  const { life } = longer;
  const { tables, batch } = context;
  const dressing = rowById(tables.processing.dressing, life.strain.dressing!);
  return {
    inputs: [
      input('Growth table', life.growthTable.name, 'text'),
      fromTable(
        dressing,
        'Dressing percentage',
        batch.dressingShare ?? dressing.share,
        'share',
        'y',
      ),
    ],
    options: { rows: [...life.weightRows, ...life.feedRows, life.losses] },
  };
}
