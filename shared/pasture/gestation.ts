import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { weakestMark, type Formula, type Sourced } from '../explain/formula.js';
import { rowById } from '../tables/tables.js';
import type { GestationTable } from '../tables/pasture-tables.js';

export const gestationFormulas = {
  due: {
    id: 'calving-due',
    title: 'Calving due',
    words:
      'Day of breeding plus the average gestation of the breed, or the date you typed. Two standard deviations either side hold about 95 of 100 calvings.',
    symbols: 'D = service + g ± 2·s',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface CalvingDue {
  readonly due: PlainDate;
  readonly early: PlainDate;
  readonly late: PlainDate;
  readonly meanDays: number;
  readonly sdDays: number;
  /** What the due date and its span rest on. */
  readonly row: Sourced;
}

/**
 * Due date of a service and the span in which about 95 % of such calvings fall.
 *
 * @throws Error for a breed that is not in the table
 */
export function calvingDue(table: GestationTable, bredOn: PlainDate, breedId = 'all'): CalvingDue {
  const breed = rowById(table.breeds, breedId);
  const sdDays = breed.sdDays ?? table.sdDays.value;
  const due = addDays(bredOn, Math.round(breed.meanDays));
  const spread = Math.round(2 * sdDays);
  return {
    due,
    early: addDays(due, -spread),
    late: addDays(due, spread),
    meanDays: breed.meanDays,
    sdDays,
    row: {
      sources: breed.sources,
      mark: weakestMark(breed.mark, breed.sdDays === undefined ? table.sdDays.mark : breed.mark),
    },
  };
}
