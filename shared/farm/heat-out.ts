import { whole } from './bounds.js';
import type { Facility } from './facility.js';
import { number, optional, row, type RowOf } from './field.js';
import { date, id } from './words.js';

/** How much of the heat of a batch works. The gear of its brooder stays as it is. */
export const heatWorksFields = row('HeatWorks', {
  /** Left out, all of it works again. */
  working: optional(
    number('Heaters that still work', whole(0, 60, 'count', 'Count those that still give heat.')),
  ),
});
export type HeatWorks = RowOf<typeof heatWorksFields>;

/** Heat of a batch that was told to be out, or mended, on a day. */
export const heatOutFields = row('HeatOut', {
  id: optional(id()),
  batchId: id('Batch'),
  date: date('Day'),
  ...heatWorksFields.fields,
});
export type HeatOut = RowOf<typeof heatOutFields>;

interface Heated {
  readonly batchId: string;
  readonly brooderId: string | undefined;
}

/** What a batch has of its place: of its brooder as many heaters as still work. */
export function asTheyWork(
  facilities: readonly Facility[],
  heatOuts: readonly HeatOut[] | undefined,
  { batchId, brooderId }: Heated,
): readonly Facility[] {
  const working = heatOuts?.findLast((out) => out.batchId === batchId)?.working;
  if (working === undefined) return facilities;
  return facilities.map((each) =>
    each.id === brooderId && each.kind === 'brooder' && working < each.heat.count
      ? { ...each, heat: { ...each.heat, count: working } }
      : each,
  );
}
