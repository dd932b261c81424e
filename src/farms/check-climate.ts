import { FieldError } from '../../shared/problems/field-problem.js';

/** Throws when a month's mean low is above its mean high. */
export function checkClimate(minC: readonly number[], maxC: readonly number[], path = ''): void {
  const problems = minC.flatMap((low, month) =>
    maxC[month]! < low
      ? [
          {
            field: `${path}monthlyMinC.${month}`,
            code: 'out-of-bounds' as const,
            given: low,
            max: maxC[month]!,
            unit: 'degC',
            fix: 'A month’s mean low cannot be above its mean high.',
          },
        ]
      : [],
  );
  if (0 < problems.length) throw new FieldError(problems);
}
