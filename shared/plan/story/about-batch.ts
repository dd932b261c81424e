import type { AboutNumbers, Moved } from '../../explain/moved.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture, NamedBatch } from '../../farm/picture.js';
import { openThingOf, WITH_FORECAST, YOURS_TO_CHOOSE } from '../open/open-things.js';
import { howFar, once } from '../open/tried.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import type { Reader } from '../../units/format.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { knownBetter } from './known-better.js';
import { placeOf, quantityAt, type PlaceInPlan } from './place-in-plan.js';
import { plausibleChanges, type PlausibleChange } from './plausible-changes.js';

export interface PlannedBatch {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly batch: NamedBatch;
  readonly plan: BatchPlan;
  readonly reader: Reader;
}

/** What is said of a number of days that are over. */
const OVER = 'That time is past: nothing that still comes tells more of it.';

/** A change, and the plan with it once somebody asked. */
interface TriedPlan extends PlausibleChange {
  /** Undefined where nothing can be planned that way, such as a share beyond its bounds. */
  readonly plan: () => BatchPlan | undefined;
}

/**
 * What is asked of the numbers of a batch: it is planned again with one thing changed at a time, once
 * for all its numbers. What only the household chooses is told where nothing else is open.
 */
export function aboutBatch(asked: PlannedBatch): AboutNumbers {
  const { picture, tables, batch, plan, reader } = asked;
  const changes = plausibleChanges(picture, tables, batch, plan, reader).map(
    (change): TriedPlan => ({ ...change, plan: once(() => replanned(change, asked)) }),
  );
  const of = (kind: PlausibleChange['kind']) => changes.filter((each) => each.kind === kind);
  return {
    *movedMost(quantity): Generator<undefined, Moved | undefined> {
      const place = placeOf(plan, quantity);
      if (!place) return openThingOf(quantity);
      const happens = yield* most(quantity, place, of('happens'));
      if (happens) {
        const { change, to } = happens;
        const better = knownBetter(plan, change.toldBy!, place, reader) ?? OVER;
        return { what: change.what, to, knownBetter: better };
      }
      const open = openThingOf(quantity, true);
      if (open?.knownBetter === WITH_FORECAST && isHeatOver(plan, place))
        return { ...open, knownBetter: OVER };
      if (open) return open;
      const chosen = yield* most(quantity, place, of('chosen'));
      if (!chosen) return undefined;
      return { what: chosen.change.what, to: chosen.to, knownBetter: YOURS_TO_CHOOSE };
    },
  };
}

/** Whether a number is of the heat of birds that need none any more. */
const isHeatOver = ({ heat, today }: BatchPlan, [part]: PlaceInPlan): boolean =>
  part === 'heat' && heat !== undefined && String(heat.lastHeatDay.value) < today;

function* most(
  quantity: Quantity,
  place: PlaceInPlan,
  changes: readonly TriedPlan[],
): Generator<undefined, { change: TriedPlan; to: Quantity } | undefined> {
  let found: { change: TriedPlan; to: Quantity; size: number } | undefined;
  for (const change of changes) {
    const changed = change.plan();
    const to = changed && quantityAt(changed, place);
    const size = to ? howFar(quantity, to) : 0;
    if (to && (found?.size ?? 0) < size) found = { change, to, size };
    yield undefined;
  }
  return found;
}

function replanned(
  { picture }: PlausibleChange,
  { tables, batch }: PlannedBatch,
): BatchPlan | undefined {
  try {
    return planBatch(picture(), tables, batch.id);
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
