import { addDays } from '../../calendar/plain-date.js';
import type { OwnJob, Progress } from '../../farm/job.js';
import type { JobSet } from '../../tables/job-sets.js';
import type { KeyDate } from '../tasks/event.js';
import { movedWithEvent } from '../work/hanging-jobs.js';
import type { PlannedJob } from '../work/planned-work.js';
import { inOrder, type YearBar, type YearRow } from './year-row.js';

/** What the jobs of a household are seen by. */
export interface JobsInSight {
  readonly jobs: readonly OwnJob[];
  readonly progress: readonly Progress[];
  /** The days that jobs are tied to. */
  readonly events: readonly KeyDate[];
  /** Where the plan of the work puts them, as far ahead as it goes. */
  readonly planned: readonly PlannedJob[];
  readonly sets: readonly JobSet[];
}

/**
 * The household's own jobs, a row for each ready-made set and one for the rest: the days between
 * which they can be done, and the day each is planned for, or due where the plan does not reach.
 */
export function jobRows(given: JobsInSight): YearRow[] {
  const done = new Set(given.progress.flatMap((mark) => (mark.doneOn ? [mark.key] : [])));
  const open = given.jobs
    .filter(({ id }) => !done.has(`own/${id}`))
    .map((job) => movedWithEvent(job, given.events));
  const ids = [...new Set(open.map(({ setId }) => setId))];
  return ids
    .sort((a, b) => Number(a === undefined) - Number(b === undefined))
    .map((setId) =>
      jobRow(
        setId === undefined ? OTHERS : setOf(given.sets, setId),
        open.filter((job) => job.setId === setId),
        given.planned,
      ),
    );
}

const OTHERS = { id: 'others', name: 'Other jobs' };

const setOf = (sets: readonly JobSet[], id: string): Pick<JobSet, 'id' | 'name'> =>
  sets.find((set) => set.id === id) ?? { ...OTHERS, id };

function jobRow(
  { id, name }: Pick<JobSet, 'id' | 'name'>,
  jobs: readonly OwnJob[],
  planned: readonly PlannedJob[],
): YearRow {
  const days = jobs.map((job) => ({ ...dayOf(job, planned), job }));
  return {
    kind: 'set',
    id,
    name,
    bars: joined(
      days.map(({ on, job: { notBefore, dueOn } }) => ({
        kind: 'work',
        from: notBefore ?? on,
        until: addDays(dueOn < on ? on : dueOn, 1),
      })),
    ),
    dates: inOrder(days.map(({ on, job }) => ({ on, words: job.name }))),
  };
}

/** The first day it is planned for; else the day it is due. */
const dayOf = ({ id, dueOn }: OwnJob, planned: readonly PlannedJob[]): { on: string } => ({
  on: planned.find(({ key }) => key === `own/${id}`)?.pieces[0]?.date ?? dueOn,
});

/** Stretches that meet, as one. */
function joined(bars: readonly YearBar[]): YearBar[] {
  const whole: YearBar[] = [];
  for (const bar of [...bars].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    const last = whole.at(-1);
    if (!last || last.until < bar.from) whole.push(bar);
    else if (last.until < bar.until) whole[whole.length - 1] = { ...last, until: bar.until };
  }
  return whole;
}
