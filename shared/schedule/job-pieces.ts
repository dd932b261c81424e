import { costOf, finishDay, placedMinutes } from './work.js';
import type { WorkJob, WorkPiece } from './work.js';

/** Whether several people can be at a job on one day, each with a piece of it: a crew is one a day. */
export const mayBeShared = (job: WorkJob): boolean => {
  const { smallestPieceMinutes: smallest, minutes, able, peopleNeeded } = job;
  return smallest !== undefined && smallest < minutes && peopleNeeded === 1 && 1 < able.length;
};

export const isWhole = ({ minutes }: WorkJob, pieces: readonly WorkPiece[]): boolean =>
  minutes <= placedMinutes(pieces);

export const isInTime = (job: WorkJob, pieces: readonly WorkPiece[]): boolean =>
  isWhole(job, pieces) && finishDay(pieces) <= job.dueDay;

/** Costs closer than this are the same. */
const EQUAL = 1e-9;

/** Costs less; as cheap, holds more of the work; holding as much, is finished sooner. */
export function isBetter(
  job: WorkJob,
  now: readonly WorkPiece[],
  was: readonly WorkPiece[],
): boolean {
  const cheaper = costOf(job, was) - costOf(job, now);
  if (EQUAL < Math.abs(cheaper)) return 0 < cheaper;
  const more = placedMinutes(now) - placedMinutes(was);
  return more === 0 ? finishDay(now) < finishDay(was) : 0 < more;
}

/** What is put on a day at least: all that is open, or the smallest useful piece of it. */
export const leastOf = ({ smallestPieceMinutes: smallest }: WorkJob, open: number): number =>
  smallest === undefined || open < smallest ? open : smallest;

/** Leaves enough for a useful piece on another day, where some would be left and a little less taken. */
export function withoutCrumb(
  { smallestPieceMinutes: smallest }: WorkJob,
  open: number,
  minutes: number,
): number {
  const rest = open - minutes;
  if (smallest === undefined || rest <= 0 || smallest <= rest) return minutes;
  return smallest <= open - smallest ? open - smallest : minutes;
}
