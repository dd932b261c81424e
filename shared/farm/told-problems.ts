import { outward } from './outward.js';
import type { FieldProblem } from '../problems/field-problem.js';
import { sumOf, weighedFields, type Weighed } from './weighing.js';

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
          unit: 'kg',
          boundBy: 'details.liveKg',
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

/** How far what all weigh together may lie from the single weights, as a share: a scale rounds. */
const ADDS_UP_SHARE = 0.01;
/** A bird this much heavier or lighter than the middle one is a slip of the pen. */
const FAR_OFF_TIMES = 3;

/** Weights are given once, and they are such as birds have. */
export function weightProblems(details: Details): FieldProblem[] {
  const { averageKg, totalKg, eachKg, birds } = details as Partial<Weighed>;
  if (averageKg === undefined && totalKg === undefined && eachKg === undefined) {
    return [
      {
        field: 'details.averageKg',
        code: 'missing',
        given: averageKg,
        fix: 'Give the average weight of the birds, the weight of all together, or each by itself.',
      },
    ];
  }
  if (averageKg !== undefined && (totalKg !== undefined || eachKg !== undefined)) {
    return [
      {
        field: 'details.averageKg',
        code: 'conflict',
        given: averageKg,
        unit: 'kg',
        fix: 'Give the average weight of the birds, or what makes it: leave one of them out.',
      },
    ];
  }
  return [
    ...(eachKg === undefined ? [] : eachProblems(eachKg, birds, totalKg)),
    ...(totalKg === undefined || birds === undefined ? [] : totalProblems(totalKg, birds)),
  ];
}

function totalProblems(totalKg: number, birds: number): FieldProblem[] {
  const { bounds } = weighedFields.fields.averageKg;
  const { min, max } = outward({ min: bounds.min * birds, max: bounds.max * birds });
  if (min <= totalKg && totalKg <= max) return [];
  return [
    {
      field: 'details.totalKg',
      code: 'out-of-bounds',
      given: totalKg,
      min,
      max,
      unit: 'kg',
      fix: 'That is no weight of so many birds: check the scale’s unit and the number of birds.',
    },
  ];
}

/** Single weights: as many as birds, none of them a slip, and what they add up to where that is given. */
function eachProblems(
  eachKg: readonly number[],
  birds: number | undefined,
  totalKg: number | undefined,
): FieldProblem[] {
  const sum = sumOf(eachKg);
  const sorted = [...eachKg].sort((a, b) => a - b);
  const middle = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  const { min, max } = outward({ min: middle / FAR_OFF_TIMES, max: middle * FAR_OFF_TIMES });
  const slip = eachKg.findIndex((kg) => max < kg || kg < min);
  return [
    ...(birds === eachKg.length
      ? []
      : [
          {
            field: 'details.birds',
            code: 'conflict' as const,
            given: birds,
            fix: `There are ${eachKg.length} single weights: give one for each bird.`,
          },
        ]),
    ...(slip < 0
      ? []
      : [
          {
            field: `details.eachKg.${slip}`,
            code: 'out-of-bounds' as const,
            given: eachKg[slip],
            min,
            max,
            unit: 'kg',
            fix: 'This bird is nothing like the others: check what was typed.',
          },
        ]),
    ...(totalKg === undefined || Math.abs(sum - totalKg) <= ADDS_UP_SHARE * totalKg
      ? []
      : [
          {
            field: 'details.totalKg',
            code: 'conflict' as const,
            given: totalKg,
            min: sum * (1 - ADDS_UP_SHARE),
            max: sum * (1 + ADDS_UP_SHARE),
            unit: 'kg',
            fix: 'The single weights do not add up to that: one of them, or the sum, is wrong.',
          },
        ]),
  ];
}

/** More milk that nobody drinks than was milked. */
export const moreKeptOut = ({
  liters,
  keptOutL,
}: Readonly<Record<string, unknown>>): FieldProblem[] =>
  Number(liters) < Number(keptOutL)
    ? [
        {
          ...{
            field: 'details.keptOutL',
            code: 'out-of-bounds',
            given: keptOutL,
            max: Number(liters),
          },
          fix: 'More was kept out than was milked: give all of the milk, and what of it was thrown away.',
        },
      ]
    : [];
