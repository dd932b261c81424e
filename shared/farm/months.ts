import type { FieldProblem } from '../problems/field-problem.js';

/** What is wrong between the mean lows and highs of the months. Either may still have gaps. */
export function problemsOfMonths(
  minC: readonly (number | undefined)[],
  maxC: readonly (number | undefined)[],
  path = '',
): FieldProblem[] {
  return minC.flatMap((low, month) => {
    const high = maxC[month];
    return low !== undefined && high !== undefined && high < low
      ? [
          {
            field: `${path}monthlyMinC.${month}`,
            code: 'out-of-bounds' as const,
            given: low,
            max: high,
            unit: 'degC',
            boundBy: `${path}monthlyMaxC.${month}`,
            fix: 'A month’s average low cannot be above its average high.',
          },
        ]
      : [];
  });
}
