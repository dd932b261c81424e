import type { PlainDate } from '../calendar/plain-date.js';
import {
  datedFact,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Sourced } from '../explain/formula.js';
import { hatchFormulas } from '../poultry/hatch.js';
import type { Ranged } from '../tables/bird-tables.js';
import type { PlanContext } from './context.js';
import type { EggsSet } from './eggs-set.js';

/** How an incubator is run, and the day it is shut. */
export interface IncubatorPart {
  readonly kind: string;
  /** Where its thermometer is read. */
  readonly where: string;
  readonly airC: NumberQuantity;
  readonly humidity: NumberQuantity;
  readonly hatchHumidity: NumberQuantity;
  readonly turning: NumberQuantity;
  readonly weightLoss: NumberQuantity;
  readonly lockdownOn: Quantity;
}

export function incubatorOf(
  { tables: { hatching } }: PlanContext,
  { species, incubator }: EggsSet,
  lockdown: PlainDate,
): IncubatorPart {
  const kind = incubator!;
  const { humidity, hatchHumidity, turning } = hatching;
  const printed = (
    label: string,
    value: number,
    unit: 'incubatorC' | 'share' | 'count',
    row: Sourced & Ranged,
    formula: (typeof hatchFormulas)['setting' | 'weightLoss'] = hatchFormulas.setting,
  ): NumberQuantity =>
    quantity(label, value, unit, formula, [fromTable(row, 'As printed', value, unit)], {
      spread: { low: row.low, high: row.high, because: row.because ?? 'guides differ' },
    });
  return {
    kind: kind.name,
    where: kind.where,
    airC: printed('Incubator air', kind.airC, 'incubatorC', kind),
    humidity: printed('Humidity until lockdown', humidity.share, 'share', humidity),
    hatchHumidity: printed('Humidity from lockdown', hatchHumidity.share, 'share', hatchHumidity),
    turning: printed('Turn the eggs, times a day', turning.perDay, 'count', turning),
    weightLoss: printed(
      'Weight lost by lockdown',
      species.weightLoss.share,
      'share',
      species.weightLoss,
      hatchFormulas.weightLoss,
    ),
    lockdownOn: datedFact('Lockdown: stop turning, lid shut', lockdown, hatchFormulas.dates, [
      fromTable(species, 'Days after setting', species.lockdownDay, 'day', 'n'),
      input('Kind', species.name, 'text'),
    ]),
  };
}
