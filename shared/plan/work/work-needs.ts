import { learnedHours } from './learned-hours.js';
import { spellsBegun } from './spells-begun.js';
import { asSaid, spentToday, type SpentToday } from './needs-as-said.js';
import { readOwnJobs } from './own-needs.js';
import { doneLately, struckOut, type DoneNeed, type StruckNeed } from './set-aside.js';
import { readTasks } from './task-needs.js';
import type { LookNeed, PlannedChore, Reading, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

export interface WorkNeeds {
  readonly needs: readonly WorkNeed[];
  readonly chores: readonly PlannedChore[];
  readonly looks: readonly LookNeed[];
  readonly done: readonly DoneNeed[];
  readonly struckOut: readonly StruckNeed[];
  readonly spentToday: readonly SpentToday[];
}

/** Everything that is still to do, and every chore, within a number of days. */
export function workNeeds(request: WorkRequest, days: number): WorkNeeds {
  const marks = new Map(request.progress.map((mark) => [mark.key, mark]));
  const judged = request.tables.judgements.work;
  const learned = learnedHours(request.progress, judged);
  const reading: Reading = { days, learned, marks, needs: [], chores: [], looks: [] };
  for (const work of request.work) readTasks(request, work, reading);
  readOwnJobs(request, reading);
  const isOpen = ({ key }: { readonly key: string }): boolean =>
    marks.get(key)?.doneOn === undefined && marks.get(key)?.struckOut !== true;
  const open = reading.needs
    .filter((need) => isOpen(need) && !need.isOver)
    .map((need) => asSaid(need, marks.get(need.key), request.today, judged))
    .filter(({ fromDay }) => fromDay < days);
  const keys = new Set(open.filter(({ untilDay }) => 0 <= untilDay).map(({ key }) => key));
  const spellOf = spellsBegun(reading, request.today);
  return {
    chores: reading.chores.filter(isOpen),
    looks: reading.looks,
    done: doneLately(request, reading),
    struckOut: struckOut(reading),
    spentToday: spentToday(request, reading),
    needs: open.map((need) => ({
      ...need,
      ...spellOf(need),
      // What is done, struck out, long past or can be done no more holds nothing up.
      waitsFor: need.waitsFor.filter(({ key }) => keys.has(key)),
      ...(need.follows ? { follows: need.follows.filter(({ key }) => keys.has(key)) } : {}),
    })),
  };
}
