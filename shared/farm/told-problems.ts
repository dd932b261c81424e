import type { FieldProblem } from '../problems/field-problem.js';
import { averageOf, weighedFields, type Weighed } from './weighing.js';

/** What is told of a fact, before it is known to be in order. */
type Details = Readonly<Record<string, unknown>>;

/** More birds dead than came. */
export const moreDead = (given: unknown, max: unknown): FieldProblem => ({
  field: 'details.dead',
  code: 'out-of-bounds',
  given,
  min: 0,
  max: Number(max),
  fix: 'No more can be dead than were in the box.',
});

/** Dressed birds weigh less than live ones. */
export function dressedProblems({ liveKg, dressedKg }: Details): FieldProblem[] {
  return typeof liveKg === 'number' && typeof dressedKg === 'number' && liveKg < dressedKg
    ? [
        {
          field: 'details.dressedKg',
          code: 'out-of-bounds',
          given: dressedKg,
          max: liveKg,
          fix: 'Dressed birds weigh less than live ones: check both, and their unit.',
        },
      ]
    : [];
}

/** Bales of what was left lying. */
export const balesLeftLying = (bales: number): FieldProblem => ({
  field: 'details.bales',
  code: 'conflict',
  given: bales,
  fix: 'Bales were made, or what was cut was left lying: leave one of them out.',
});

/** One weight is given, the average or all together, and it is one that birds have. */
export function weightProblems(details: Details): FieldProblem[] {
  const { averageKg, totalKg, birds } = details as Partial<Weighed>;
  if ((averageKg === undefined) === (totalKg === undefined)) {
    return [
      {
        field: 'details.averageKg',
        code: averageKg === undefined ? 'missing' : 'conflict',
        given: averageKg,
        fix: 'Give the average weight of the birds, or the weight of all together.',
      },
    ];
  }
  if (totalKg === undefined || birds === undefined) return [];
  const { min, max } = weighedFields.fields.averageKg.bounds;
  const each = averageOf({ birds, totalKg });
  return min <= each && each <= max
    ? []
    : [
        {
          field: 'details.totalKg',
          code: 'out-of-bounds',
          given: totalKg,
          min: min * birds,
          max: max * birds,
          fix: 'That is no weight of so many birds: check the scale’s unit and the number of birds.',
        },
      ];
}
