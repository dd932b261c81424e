import { addDays, weekdayOf, yearOf, type PlainDate } from '../../shared/calendar/plain-date.js';
import { WHOLE_FARM } from '../../shared/farm/told-fact.js';
import type { Said } from '../told/keep-facts.js';
import type { BatchWithId, SampleSeed } from './sample-seed.js';

/** Bags opened for a batch up to a day. */
export function openedFacts({ told }: SampleSeed, batch: BatchWithId, today: PlainDate): Said[] {
  return told.opened
    .filter(({ batchId }) => batchId === batch.id)
    .flatMap(({ ageDays = [], every }) => [
      ...ageDays.map((age) => addDays(batch.arrivalDate, age)),
      ...Array.from({ length: every?.times ?? 0 }, (_, k) =>
        addDays(today, -every!.days * (every!.times - k) + 1),
      ),
    ])
    .filter((on) => batch.arrivalDate <= on && on < today)
    .map((on) => ({ kind: 'feed-opened', about: batch.id, on, details: { bags: 1 } }));
}

/** Receipts of the year up to a day, each on a day on which its seller is open. */
export function receiptFacts({ told, suppliers }: SampleSeed, today: PlainDate): Said[] {
  return told.receipts.flatMap(({ monthDay, again, from, lines }) => {
    const open = suppliers.find(({ name }) => name === from)?.openWeekdays;
    return Array.from({ length: 1 + (again?.times ?? 0) }, (_, k) => {
      const inYear = addDays(`2026-${monthDay}`, k * (again?.days ?? 0)).slice(5);
      const on = openFrom(lastSuch(inYear, today), open);
      return lines.map((details): Said => ({
        ...{ kind: 'bought', about: WHOLE_FARM, on },
        details: { ...details, from },
      }));
    })
      .flat()
      .filter(({ on }) => on < today);
  });
}

/** The last such day of the year before a day. */
const lastSuch = (monthDay: string, today: PlainDate): PlainDate => {
  const thisYear = `${yearOf(today)}-${monthDay}`;
  return thisYear < today ? thisYear : `${yearOf(today) - 1}-${monthDay}`;
};

function openFrom(date: PlainDate, open: readonly number[] | undefined): PlainDate {
  let on = date;
  while (open && !open.includes(weekdayOf(on))) on = addDays(on, 1);
  return on;
}
