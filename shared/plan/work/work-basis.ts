import { markOfBlend, type Sourced } from '../../explain/formula.js';
import { together } from '../../explain/quantity.js';
import { groundRows } from './work-ground.js';
import type { PlannedChore, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** What the numbers of a work plan rest on. */
export interface WorkBasis {
  /** Hours people have. */
  readonly given: Sourced;
  readonly chores: Sourced;
  /** Hours of all work that is due. */
  readonly due: Sourced;
  /** On which day, and by whom, work is done. */
  readonly planned: Sourced;
}

/** Everything of a table or judged that a work plan goes by, the weakest link deciding. */
export function workBasis(
  request: WorkRequest,
  needs: readonly WorkNeed[],
  chores: readonly PlannedChore[],
): WorkBasis {
  const { tables, people } = request;
  const { hoursByWeekday, startH, horizonDays, smallestPieceHours, placing } = tables.work;
  const told = (has: boolean, row: Sourced): Sourced[] => (has ? [] : [row]);
  const given = told(
    people.every((person) => person.hoursByWeekday !== undefined),
    hoursByWeekday,
  );
  const due = needs.map((need) => hoursFrom(request, need));
  return {
    given: together(given),
    chores: together(chores.map(({ row }) => row)),
    due: together(due),
    planned: together([
      ...[...given, ...due],
      ...told(
        people.every((person) => person.startH !== undefined),
        startH,
      ),
      ...[horizonDays, smallestPieceHours, placing],
      ...Object.values(tables.judgements.work),
      ...groundRows(request),
    ]),
  };
}

/** What the hours of a piece of work rest on: its template, or the log once that is the heavier. */
export function hoursFrom(
  { tables }: WorkRequest,
  { row, learned, hasOwnHours }: WorkNeed,
): Sourced {
  if (hasOwnHours) return { sources: [], mark: 'own-record' };
  if (!learned) return row;
  const weight = tables.judgements.work.usualHoursWeight.value;
  return {
    sources: row.sources,
    mark: markOfBlend(learned.times, { weight, mark: row.mark }),
  };
}
