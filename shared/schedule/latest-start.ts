import type { WorkJob } from './work.js';

/**
 * Last day on which a job can be begun and still be done by a day, with the hours it has for
 * itself: days that suit it are filled backward from its end.
 *
 * @param together minutes of each day that as many people as the job takes have together
 * @param suits 1 for every day that suits it; all do when left out
 * @returns -1 when no day from its first on is early enough
 */
export function latestStart(
  job: Pick<WorkJob, 'minutes' | 'smallestPieceMinutes' | 'fromDay'>,
  byDay: number,
  together: Int32Array,
  suits: Uint8Array | undefined,
): number {
  const { minutes, smallestPieceMinutes: smallest, fromDay } = job;
  let open = minutes;
  for (let day = Math.min(byDay, together.length - 1); Math.max(0, fromDay) <= day; day--) {
    if (suits && suits[day] === 0) continue;
    const there = together[day]!;
    if (there < (smallest === undefined ? minutes : Math.min(smallest, open))) continue;
    open -= there;
    if (open <= 0) return day;
  }
  return -1;
}
