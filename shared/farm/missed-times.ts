import type { PlainDate } from '../calendar/plain-date.js';
import type { OwnJob } from './job.js';

/** “Weed and water, 7 of 8”: how jobs of a set are named that come several times. */
const TIME = /^(.+), (\d+) of \d+$/;

/**
 * Ids of jobs of a ready-made set that were due, while the next time of the same work has begun: that
 * one takes the place of the one missed, as two of them on one day help nobody.
 */
export function missedTimes(jobs: readonly OwnJob[], today: PlainDate): ReadonlySet<string> {
  const times = jobs.flatMap((job) => {
    const [, name, number] = (job.setId !== undefined && TIME.exec(job.name)) || [];
    return name === undefined
      ? []
      : [{ job, work: `${job.setId}/${name}`, number: Number(number) }];
  });
  const begun = new Map<string, number>();
  for (const { job, work, number } of times)
    if ((job.notBefore ?? job.dueOn) <= today)
      begun.set(work, Math.max(number, begun.get(work) ?? 0));
  return new Set(
    times
      .filter(({ job, work, number }) => job.dueOn < today && number < (begun.get(work) ?? 0))
      .map(({ job }) => job.id),
  );
}
