import type { WorkMark } from '../../farm/job.js';

/** What the household's own log says of the time a kind of work takes. */
export interface LearnedHours {
  /** Hours it takes over the hours the table gives. */
  readonly factor: number;
  readonly times: number;
}

/** A slip of the pen counts for no more than this, either way. */
const MOST_FACTOR = 5;

/**
 * Factors on the hours of templates, by kind of work: the geometric mean of what was logged over
 * what was reckoned, with one more time at the table's own hours, so that a single log moves it
 * half the way (on a scale of ratios).
 *
 * Source: shrinkage of a mean towards a prior by one observation; common practice.
 */
export function learnedHours(marks: readonly WorkMark[]): Map<string, LearnedHours> {
  const logs = new Map<string, number[]>();
  for (const { kind, hours, reckonedHours } of marks) {
    if (kind === undefined || hours === undefined || reckonedHours === undefined) continue;
    const ratio = Math.min(MOST_FACTOR, Math.max(1 / MOST_FACTOR, hours / reckonedHours));
    logs.set(kind, [...(logs.get(kind) ?? []), Math.log(ratio)]);
  }
  return new Map(
    [...logs].map(([kind, ratios]) => [
      kind,
      {
        factor: Math.exp(ratios.reduce((sum, each) => sum + each, 0) / (ratios.length + 1)),
        times: ratios.length,
      },
    ]),
  );
}
