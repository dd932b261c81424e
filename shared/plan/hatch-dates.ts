import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { PlanContext } from './context.js';
import type { EggsSet } from './eggs-set.js';

/** The dates of a hatch; lockdown is an incubator’s. */
export interface HatchDates {
  readonly set: PlainDate;
  readonly candle: readonly PlainDate[];
  readonly lockdown: PlainDate | undefined;
}

export function hatchDatesOf({ batch, tables }: PlanContext, eggs: EggsSet): HatchDates {
  const set = addDays(batch.arrivalDate, -eggs.species.incubationDays);
  return {
    set,
    candle: tables.hatching.candling.days.map((day) => addDays(set, day)),
    lockdown: eggs.incubator && addDays(set, eggs.species.lockdownDay),
  };
}
