import { weakestMark, type Sourced } from '../explain/formula.js';
import type { Judgements } from '../tables/judgements.js';
import type { NeedStage, Nutrient } from '../tables/ration-tables.js';

/** What a mix must hold at least, or may at most, of a nutrient. */
export interface NutrientLimit {
  readonly nutrient: Nutrient;
  readonly side: 'least' | 'most';
  /** In the unit of the tables. */
  readonly value: number;
  /** The value goes with a feed of this energy, and stands in proportion to it. */
  readonly atKcalPerKg?: number;
  /** What a mix falls short of only below this: the need itself, without headroom. */
  readonly need: number;
  readonly row: Sourced;
}

/** Mixed above the need, because an own ingredient may hold less than the table's. */
const WITH_HEADROOM: readonly Nutrient[] = [
  'proteinPercent',
  'lysinePercent',
  'methioninePercent',
  'methionineCystinePercent',
  'threoninePercent',
  'tryptophanPercent',
];
const OVER = {
  calciumPercent: 'calciumOverShare',
  phosphorusPercent: 'phosphorusOverShare',
  sodiumPercent: 'sodiumOverShare',
} as const;
const MINERALS = ['calciumPercent', 'phosphorusPercent', 'sodiumPercent'] as const;

/**
 * The limits of a mix for birds of one age. Needs go with the energy of their table, and are taken
 * in proportion where a mix holds another: birds eat for energy (NRC 1994, from memory).
 */
export function limitsFor(stage: NeedStage, judged: Judgements['rations']): NutrientLimit[] {
  const { needs } = stage;
  const atKcalPerKg = needs.energyKcalPerKg;
  const both = (other: Sourced): Sourced => ({
    sources: [...stage.sources, ...other.sources],
    mark: weakestMark(stage.mark, other.mark),
  });
  const least = (nutrient: Nutrient, need: number, overShare: number, row: Sourced) =>
    ({ nutrient, side: 'least', value: need * (1 + overShare), atKcalPerKg, need, row }) as const;
  const most = (nutrient: Nutrient, value: number, row: Sourced) =>
    ({ nutrient, side: 'most', value, need: value, row }) as const;
  const { leastEnergyShare, headroomShare } = judged;
  const fiber = stage.is === 'chick' ? judged.youngFiberShare : judged.grownFiberShare;
  const leastEnergy = atKcalPerKg * leastEnergyShare.value;
  return [
    {
      nutrient: 'energyKcalPerKg',
      side: 'least',
      value: leastEnergy,
      need: leastEnergy,
      row: both(leastEnergyShare),
    },
    ...WITH_HEADROOM.flatMap((nutrient): NutrientLimit[] => {
      const need = needs[nutrient as keyof typeof needs];
      return need === undefined
        ? []
        : [least(nutrient, need, headroomShare.value, both(headroomShare))];
    }),
    ...MINERALS.map((nutrient) => least(nutrient, needs[nutrient], 0, stage)),
    ...MINERALS.map((nutrient) => {
      const over = judged[OVER[nutrient]];
      return most(nutrient, needs[nutrient] * (1 + over.value), both(over));
    }),
    most('fiberPercent', fiber.value * 100, fiber),
  ];
}

/** A limit in a mix of so much energy. */
export const atEnergy = (
  { atKcalPerKg }: NutrientLimit,
  value: number,
  energyKcalPerKg: number,
): number => (atKcalPerKg === undefined ? value : (value * energyKcalPerKg) / atKcalPerKg);
