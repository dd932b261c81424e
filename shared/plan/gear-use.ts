import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Occupancy } from '../farm/occupancy.js';
import { meetingOf } from './occupancy.js';

/** A batch in a place, and who else wants it on the same days. */
export interface PlaceUse {
  readonly batchName: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly clashesWith: readonly string[];
}

/** A place from today on: who is in it when, and the first day from which it is free. */
export interface GearUse {
  readonly uses: readonly PlaceUse[];
  /** Today where nobody is in it; the last day of that stretch where another batch comes. */
  readonly freeFrom: PlainDate;
  readonly freeUntil?: PlainDate;
}

/**
 * Who is in a place from a day on, in the order of days, and when it is free next.
 *
 * @param held what batches hold on to, days of cleaning and heating up counted, in any order
 */
export function gearUse(held: readonly Occupancy[], facilityId: string, today: PlainDate): GearUse {
  const here = held
    .filter((each) => each.facilityId === facilityId && today <= each.to)
    .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  const uses = here.map((use): PlaceUse => ({
    batchName: use.batchName,
    ...{ from: use.from, to: use.to },
    clashesWith: meetingOf(
      use,
      here.filter((other) => other !== use),
    ).inTheWay.map(({ batchName }) => batchName),
  }));
  const freeFrom = here.reduce(
    (day, { from, to }) => (from <= day && day <= to ? addDays(to, 1) : day),
    today,
  );
  const next = here.find(({ from }) => freeFrom < from);
  return { uses, freeFrom, ...(next ? { freeUntil: addDays(next.from, -1) } : {}) };
}
