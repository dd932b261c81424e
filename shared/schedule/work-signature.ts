import { Digest } from '../maths/digest.js';
import type { WorkProblem } from './work.js';

/**
 * A short text for all that a plan of the work is made from: two problems have the same one when
 * their jobs, days and hours are the same, whatever the jobs are called.
 */
export function signatureOf({ days, workers, jobs }: WorkProblem): string {
  const digest = new Digest();
  const others = jobs.map(({ id: _id, suits, ...job }) => ({
    ...job,
    hasSuits: suits !== undefined,
  }));
  const first = workers.flatMap(({ helpsFirst }, w) => (helpsFirst ? [w] : []));
  digest.addText(
    JSON.stringify([days, workers.length, others, ...(first.length === 0 ? [] : [first])]),
  );
  // Lists by day are taken in as they are: as text they would be half a million characters.
  const addByDay = (list: ArrayLike<number>): void => {
    digest.addNumbers([list.length]);
    digest.addNumbers(list);
  };
  for (const { minutes, lightMinutes } of workers) [minutes, lightMinutes].forEach(addByDay);
  workers.forEach(({ together }, w) => {
    for (const [other, minutes] of together ?? []) {
      digest.addNumbers([w, other]);
      addByDay(minutes);
    }
  });
  for (const { suits } of jobs) if (suits) addByDay(suits);
  return digest.text();
}
