import type { IngredientProduct } from '../farm/mix-ingredient.js';
import { minorDigits } from '../units/format.js';
import type { Sourced } from '../explain/formula.js';
import type { Judgements } from '../tables/judgements.js';
import {
  NUTRIENT_KEYS,
  type Composition,
  type Ingredient,
  type IngredientLimit,
  type Nutrient,
  type StageOfLife,
} from '../tables/ration-tables.js';

/** An ingredient that may go into a mix, at a price. */
export interface MixFeed {
  readonly id: string;
  readonly name: string;
  readonly what: Ingredient['what'];
  readonly ingredientId: string;
  readonly holds: Composition;
  /** Nutrients of which the bag or a laboratory says what it holds. */
  readonly own: readonly Nutrient[];
  /** Of the table. */
  readonly row: Sourced;
  /** Smallest coins a kg, with decimals: a price of one is rounded only in a sum. */
  readonly minorPerKg: number;
  readonly price: string;
  readonly bagKg: number;
  /** Shares of the mix, 0 to 1. */
  readonly least: number;
  readonly most: number;
  /** What sets the most: a row of the table, or nothing where it is the household's own or none. */
  readonly limit?: IngredientLimit;
}

/** What an own value is called, of what a table prints. */
const OWN_VALUES = {
  proteinPercent: 'proteinShare',
  lysinePercent: 'lysineShare',
  methioninePercent: 'methionineShare',
  methionineCystinePercent: 'methionineCystineShare',
  threoninePercent: 'threonineShare',
  tryptophanPercent: 'tryptophanShare',
  calciumPercent: 'calciumShare',
  phosphorusPercent: 'phosphorusShare',
  sodiumPercent: 'sodiumShare',
  fiberPercent: 'fiberShare',
} as const satisfies Readonly<Record<Exclude<Nutrient, 'energyKcalPerKg'>, string>>;

/** What the household buys, as a part of a mix for birds of some stages, the strictest of which holds. */
export function mixFeed(
  product: IngredientProduct,
  row: Ingredient,
  of: {
    readonly stages: readonly StageOfLife[];
    readonly currency: string;
    readonly judged: Judgements['rations'];
  },
): MixFeed {
  const { bagKg, price, mostShare, holds = {} } = product;
  const ownOf = (nutrient: Nutrient): number | undefined => {
    if (nutrient === 'energyKcalPerKg') return holds.energyKcalPerKg;
    const share = holds[OWN_VALUES[nutrient]];
    return share === undefined ? undefined : 100 * share;
  };
  const fixed =
    product.fixedShare ?? (row.what === 'premix' ? of.judged.premixShare.value : undefined);
  const [limit] = row.limits
    .filter(({ stages }) => stages.some((stage) => of.stages.includes(stage)))
    .sort((a, b) => a.percent - b.percent);
  const most = mostShare ?? (limit === undefined ? 1 : limit.percent / 100);
  return {
    id: product.id,
    name: product.name,
    what: row.what,
    ingredientId: row.id,
    holds: Object.fromEntries(
      NUTRIENT_KEYS.map((nutrient) => [nutrient, ownOf(nutrient) ?? row.holds[nutrient]]),
    ) as Composition,
    own: NUTRIENT_KEYS.filter((nutrient) => ownOf(nutrient) !== undefined),
    row,
    minorPerKg: (Number(price) * 10 ** minorDigits(of.currency)) / bagKg,
    price,
    bagKg,
    least: fixed ?? 0,
    most: fixed ?? most,
    ...(mostShare === undefined && limit !== undefined ? { limit } : {}),
  };
}
