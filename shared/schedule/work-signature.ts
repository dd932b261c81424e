import { digestOf } from '../maths/digest.js';
import type { WorkProblem } from './work.js';

/**
 * A short text for all that a plan of the work is made from: two problems have the same one when
 * their jobs, days and hours are the same, whatever the jobs are called.
 */
export function signatureOf({ days, workers, jobs }: WorkProblem): string {
  const nameless = jobs.map(({ id: _id, ...job }) => job);
  return digestOf(JSON.stringify([days, workers, nameless], numbersAsText));
}

const numbersAsText = (_key: string, value: unknown): unknown =>
  value instanceof Int32Array || value instanceof Uint8Array ? value.join() : value;
