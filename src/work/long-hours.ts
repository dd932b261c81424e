import type { Progress } from '../../shared/farm/job.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Judgements } from '../../shared/tables/judgements.js';

const HOURS = ['hours', 'hoursDone', 'ownHours'] as const;
type Hours = Pick<Progress, (typeof HOURS)[number]>;

/** Whether hours are so many that it matters what was reckoned. */
export const isLong = (said: Hours, { mostTakenH }: Judgements['work']): boolean =>
  HOURS.some((name) => mostTakenH.value < (said[name] ?? 0));

/**
 * Refuses hours of a job that are more than a job takes in weeks of evenings and many times those it
 * was reckoned at. Of work that no plan has any more nothing is known, and any hours are believed.
 *
 * @param fieldOf the path of the hours in what the client sent
 */
export function refuseLong(
  said: Hours,
  reckonedHours: number | undefined,
  { mostTakenH, mostTakenTimes }: Judgements['work'],
  fieldOf = (name: string): string => name,
): void {
  if (reckonedHours === undefined) return;
  const max = Math.max(mostTakenH.value, Math.ceil(mostTakenTimes.value * reckonedHours));
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
