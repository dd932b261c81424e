import type { Progress } from '../../shared/farm/job.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Judgements } from '../../shared/tables/judgements.js';

const DAY_H = 24;
const HOURS = ['hours', 'hoursDone', 'ownHours'] as const;
type Hours = Pick<Progress, (typeof HOURS)[number]>;

/** Whether hours are more than anybody has in a day: only then it matters what was reckoned. */
export const isLong = (said: Hours): boolean => HOURS.some((name) => DAY_H < (said[name] ?? 0));

/**
 * Refuses hours of a job that are more than a day and many times those it was reckoned at. Of work
 * that no plan has any more nothing is known, and any hours are believed.
 *
 * @param fieldOf the path of the hours in what the client sent
 */
export function refuseLong(
  said: Hours,
  reckonedHours: number | undefined,
  { mostTakenTimes }: Judgements['work'],
  fieldOf = (name: string): string => name,
): void {
  if (reckonedHours === undefined) return;
  const max = Math.max(DAY_H, Math.ceil(mostTakenTimes.value * reckonedHours));
  const problems = HOURS.flatMap((name): FieldProblem[] => {
    const given = said[name];
    return given === undefined || given <= max
      ? []
      : [
          {
            ...{ field: fieldOf(name), code: 'out-of-bounds', given, min: 0, max, unit: 'h' },
            fix: 'This work was reckoned at far less. Check the number: it is hours of each who takes part, not minutes.',
          },
        ];
  });
  if (0 < problems.length) throw new FieldError(problems);
}
