import type { PlainDate } from '../../calendar/plain-date.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';

/** The piece of work that the plan puts on the earliest day from one on. */
export interface NextPlanned {
  readonly on: PlainDate;
  readonly job: PlannedJob;
}

/** The first work planned on a day or later; undefined where nothing is. */
export function nextPlanned(
  { jobs }: Pick<WorkPlan, 'jobs'>,
  from: PlainDate,
): NextPlanned | undefined {
  const ahead = jobs.flatMap((job) =>
    job.pieces.filter(({ date }) => from <= date).map(({ date }) => ({ on: date, job })),
  );
  return ahead.reduce<NextPlanned | undefined>(
    (first, each) => (first && first.on <= each.on ? first : each),
    undefined,
  );
}
