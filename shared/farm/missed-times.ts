import type { PlainDate } from '../calendar/plain-date.js';
import type { OwnJob } from './job.js';

/** “Weed and water, 7 of 8”: how jobs of a set are named that come several times. */
const TIME = /^(.+), (\d+) of (\d+)$/;

/** The work of which a job is one time, by its name; undefined of work that comes once. */
export function timeOfSet(
  name: string,
): { readonly work: string; readonly number: number; readonly times: number } | undefined {
  const [, work, number, times] = TIME.exec(name) ?? [];
  return work === undefined ? undefined : { work, number: Number(number), times: Number(times) };
}

/**
 * Ids of jobs of a ready-made set that were due, while the next time of the same work has begun: that
 * one takes the place of the one missed, as two of them on one day help nobody.
 */
export function missedTimes(jobs: readonly OwnJob[], today: PlainDate): ReadonlySet<string> {
  const times = jobs.flatMap((job) => {
    const time = job.setId === undefined ? undefined : timeOfSet(job.name);
    return time ? [{ job, work: `${job.setId}/${time.work}`, number: time.number }] : [];
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
