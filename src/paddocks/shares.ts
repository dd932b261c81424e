import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { SplitDto } from './paddock.dto.js';

/** How far shares may be from making the whole: three thirds of 0.333. */
const SLACK = 0.002;

/**
 * Shares of the parts a paddock is split into, 1 together.
 *
 * @throws FieldError when neither parts nor shares are given, or shares do not make the whole
 */
export function sharesOf({ parts, shares }: SplitDto): number[] {
  if (shares === undefined && parts !== undefined) {
    return Array.from({ length: parts }, () => 1 / parts);
  }
  if (shares === undefined) throw new FieldError([NEITHER]);
  const problems = problemsOf(shares, parts);
  if (0 < problems.length) throw new FieldError(problems);
  const sum = sumOf(shares);
  return shares.map((share) => share / sum);
}

const NEITHER: FieldProblem = {
  field: 'parts',
  code: 'missing',
  given: undefined,
  fix: 'Give the number of equal parts, or the share of each part.',
};

function problemsOf(shares: readonly number[], parts: number | undefined): FieldProblem[] {
  const sum = sumOf(shares);
  if (SLACK < Math.abs(sum - 1)) {
    return [
      {
        field: 'shares',
        code: 'out-of-bounds',
        given: `${Number(sum.toFixed(4))} together`,
        min: 1 - SLACK,
        max: 1 + SLACK,
        fix: 'The shares must make 1 together.',
      },
    ];
  }
  if (parts === undefined || parts === shares.length) return [];
  return [
    {
      field: 'parts',
      code: 'conflict',
      given: parts,
      boundBy: 'shares',
      fix: 'Leave the number of parts out, or give as many shares.',
    },
  ];
}

const sumOf = (shares: readonly number[]): number =>
  shares.reduce((total, share) => total + share, 0);
