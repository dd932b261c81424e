import type { Progress } from '../../farm/job.js';
import type { Judgements } from '../../tables/judgements.js';

/** What the household's own log says of the time a kind of work takes. */
export interface LearnedHours {
  /** Hours it takes over the hours the table gives. */
  readonly factor: number;
  readonly times: number;
}

/**
 * Factors on the hours of templates, by kind of work: the geometric mean of what was logged over
 * what was reckoned, with the table's own hours counted as so many times more: once, a single
 * log moves it half the way (on a scale of ratios). A slip of the pen counts for no more than the
 * most, either way.
 *
 * Source: shrinkage of a mean toward a prior by one observation; common practice.
 */
export function learnedHours(
  marks: readonly Progress[],
  { mostLoggedFactor, usualHoursWeight }: Judgements['work'],
): Map<string, LearnedHours> {
  const most = mostLoggedFactor.value;
  const logs = new Map<string, number[]>();
  for (const { kind, hours, reckonedHours } of marks) {
    if (kind === undefined || hours === undefined || reckonedHours === undefined) continue;
    const ratio = Math.min(most, Math.max(1 / most, hours / reckonedHours));
    logs.set(kind, [...(logs.get(kind) ?? []), Math.log(ratio)]);
  }
  return new Map(
    [...logs].map(([kind, ratios]) => [
      kind,
      {
        factor: Math.exp(
          ratios.reduce((sum, each) => sum + each, 0) / (ratios.length + usualHoursWeight.value),
        ),
        times: ratios.length,
      },
    ]),
  );
}
