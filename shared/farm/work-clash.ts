import type { Progress } from './job.js';
import { isSame } from './merge-row.js';

type Marks = Omit<Progress, 'key'>;

/** Whether work is still to be done, and when it was: one of these rules the others out. */
const STATE = ['doneOn', 'struckOut'] as const;

/** What one may say beside what the other said of its state. */
const BESIDE: ReadonlySet<keyof Marks> = new Set<keyof Marks>(['hours', 'because', 'doneBy']);

/**
 * Whether two people said of a piece of work what cannot both be so. What one said of its hours and
 * the other of its days goes together; that it is done or struck out goes with nothing but itself.
 *
 * @param before what both of them knew
 * @param theirs what holds now, by what was told meanwhile
 * @param said what is said now
 */
export function saysOtherOfWork(before: Marks, theirs: Marks, said: Marks): boolean {
  const changed = (name: keyof Marks): boolean => !isSame(before[name], theirs[name]);
  const names = (Object.keys(said) as (keyof Marks)[]).filter((name) => said[name] !== undefined);
  const differs = names.filter((name) => !isSame(said[name], theirs[name]));
  if (differs.some(changed)) return true;
  const isOver = STATE.some((name) => changed(name) && theirs[name] !== undefined);
  return isOver && differs.some((name) => !BESIDE.has(name));
}
