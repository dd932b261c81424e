import { whole } from './bounds.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Brooder } from './facility.js';
import { number, optional, row, type RowOf } from './field.js';
import { date, id } from './words.js';

/** How much of the heat of the brooder of a batch works. The gear of the brooder stays as it is. */
export const heatWorksFields = row('HeatWorks', {
  /** Left out, all of it works again. */
  working: optional(
    number('Heaters that still work', whole(0, 60, 'count', 'Count those that still give heat.')),
  ),
  /** All there were on that day: those that are added to the brooder later work. */
  of: optional(
    number('Heaters there were', whole(0, 60, 'count', 'Count all that hung there, out or not.')),
  ),
});
export type HeatWorks = RowOf<typeof heatWorksFields>;

/** Heat of the brooder of a batch that was told to be out, or mended, on a day. */
export const heatOutFields = row('HeatOut', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  ...heatWorksFields.fields,
});
export type HeatOut = RowOf<typeof heatOutFields>;

/** What was told of the heat of a brooder, by whichever batch of it. */
export function heatOutsIn(
  brooderId: string | undefined,
  heatOuts: readonly HeatOut[] = [],
  batches: readonly { readonly id: string; readonly brooderId?: string }[],
): readonly HeatOut[] {
  if (brooderId === undefined || heatOuts.length === 0) return [];
  const inIt = new Set(batches.filter((each) => each.brooderId === brooderId).map(({ id }) => id));
  return heatOuts.filter(({ batchId }) => inIt.has(batchId));
}

/**
 * How many heaters of a brooder work on a day: all of them before they were told to be out, and once
 * they were told to be mended. What was added to the brooder since works, and what was taken out of
 * it is held to be what did not.
 *
 * @param heatOuts those of that brooder, the oldest first
 */
export function heatersOn(
  { heat: { count } }: Pick<Brooder, 'heat'>,
  heatOuts: readonly HeatOut[],
  date: PlainDate,
): number {
  const told = heatOuts.findLast((out) => out.date <= date);
  if (told?.working === undefined) return count;
  const added = Math.max(0, count - (told.of ?? count));
  return Math.min(count, told.working + added);
}
