import { fromFarm, fromTable, quantity, type NumberQuantity } from '../explain/quantity.js';
import type { Farm } from '../farm/farm.js';
import type { IngredientProduct } from '../farm/mix-ingredient.js';
import type { Product } from '../farm/product.js';
import { bagsFor, costMinor } from '../money/money.js';
import type { BirdsToFeed, NeedStage } from '../tables/ration-tables.js';
import type { Tables } from '../tables/tables.js';
import { onScale } from '../units/scale.js';
import { againstBought, batchInput, type AgainstBought } from './against-bought.js';
import type { BirdsOfAge } from './birds-for.js';
import { NONE, type CheapestBy, type LeastCost } from './least-cost.js';
import type { MixFeed } from './mix-feed.js';
import type { NutrientLimit } from './nutrient-limits.js';
import { nutrientLines, type NutrientLine, type Weighed } from './nutrient-lines.js';
import { rationFormulas } from './ration-formulas.js';
import { lowerName, sayLimits, sayPrices } from './ration-words.js';
import { squareCheck, type SquareCheck } from './square-check.js';

/** What is asked: feed for which birds, how much at once, of what. */
export interface RationAsked {
  readonly birdsId: string;
  readonly stageId: string;
  /** Flocks that eat of the same mix. */
  readonly alsoFor?: readonly BirdsOfAge[] | undefined;
  readonly batchKg: number;
  readonly by?: CheapestBy | undefined;
  readonly ingredients: readonly IngredientProduct[];
  /** What the farm buys: the mix is held against the feed of the same phase. */
  readonly products: readonly Product[];
  readonly farm: Pick<Farm, 'units' | 'currency'>;
}

/** A line of the mixing sheet. */
export interface MixLine {
  /** Of the household's ingredient. */
  readonly id: string;
  readonly ingredientId: string;
  readonly name: string;
  readonly amount: NumberQuantity;
  /** Of the mix as it is weighed, 0 to 1. */
  readonly share: number;
  readonly costMinor: number;
  /** Too little to spread by itself: stirred into a bucket of the rest first. */
  readonly isStirredFirst: boolean;
}

export interface Mix {
  readonly lines: readonly MixLine[];
  readonly totalKg: number;
  readonly totalMinor: number;
  /** What whole bags of all of it cost. */
  readonly toBegin: NumberQuantity;
  readonly perKg: NumberQuantity;
  readonly nutrients: readonly NutrientLine[];
  /** What prices and limits decide, in words. */
  readonly prices: readonly string[];
  readonly limits: readonly string[];
  readonly against?: AgainstBought;
  readonly square?: SquareCheck;
}

/** What a mix is made from: for whom, within which limits, of what, and what was found. */
export interface Made {
  readonly birds: BirdsToFeed;
  readonly stage: NeedStage;
  readonly limits: readonly NutrientLimit[];
  readonly feeds: readonly MixFeed[];
  readonly found: LeastCost;
}

/** The mix that was found, as it is weighed in. */
export function mixOf(asked: RationAsked, tables: Tables, made: Made): Mix {
  const { farm, batchKg, products } = asked;
  const { feeds, found, limits, stage, birds } = made;
  const parts = weighed(feeds, found.shares, asked);
  const totalKg = parts.reduce((sum, { kg }) => sum + kg, 0);
  const lines = parts.map((part) => lineOf(part, asked, stage));
  const nutrients = nutrientLines(parts, limits, found);
  const perKg = costPerKg(parts);
  const energy = nutrients.find(({ nutrient }) => nutrient === 'energyKcalPerKg')!.has;
  const against = againstBought(
    { perKg, energy, batchKg, parts },
    { birds, stage },
    { products, tables, reader: farm },
  );
  const square = squareCheck(parts);
  return {
    lines,
    totalKg,
    totalMinor: lines.reduce((sum, line) => sum + line.costMinor, 0),
    toBegin: wholeBags(parts, farm.currency),
    perKg,
    nutrients,
    prices: sayPrices(feeds, found, farm),
    limits: sayLimits(limits, found, batchKg, farm),
    ...(against ? { against } : {}),
    ...(square ? { square } : {}),
  };
}

/** Minerals and bagged amino acids round up: they are in it because without them it falls short. */
const roundsUp = ({ what }: MixFeed): boolean => what === 'mineral' || what === 'additive';

/** The mix as scales can weigh it, the most first. */
function weighed(
  feeds: readonly MixFeed[],
  shares: readonly number[],
  { batchKg, farm: { units } }: RationAsked,
): Weighed[] {
  const all = feeds.flatMap((feed, i) => {
    const share = shares[i]!;
    if (share <= NONE) return [];
    const kg = onScale(share * batchKg, units, roundsUp(feed) ? 'up' : 'near');
    return kg === 0 ? [] : [{ feed, kg }];
  });
  const totalKg = all.reduce((sum, { kg }) => sum + kg, 0);
  return all.map((part) => ({ ...part, share: part.kg / totalKg })).sort((a, b) => b.kg - a.kg);
}

/** Below this share a part is stirred into a bucket of the rest first. */
const STIRRED_FIRST = 0.015;

function lineOf({ feed, kg, share }: Weighed, asked: RationAsked, stage: NeedStage): MixLine {
  const { currency } = asked.farm;
  return {
    id: feed.id,
    ingredientId: feed.ingredientId,
    name: feed.name,
    amount: quantity(
      feed.name,
      kg,
      'kg',
      rationFormulas.amount,
      [
        batchInput(asked.batchKg),
        fromFarm(`Price of ${lowerName(feed.name)}`, feed.minorPerKg, 'moneyPerKg', 'pᵢ'),
        ...(feed.limit
          ? [
              fromTable(
                feed.limit,
                `At most: ${lowerName(feed.limit.because)}`,
                feed.most,
                'share',
                'uᵢ',
              ),
            ]
          : []),
      ],
      { rows: [stage, feed.row] },
    ),
    share,
    costMinor: costMinor(feed.price, kg / feed.bagKg, currency),
    isStirredFirst: share < STIRRED_FIRST,
  };
}

/** What has to be bought for a first mix, as nobody sells an ounce of salt. */
const wholeBags = (parts: readonly Weighed[], currency: string): NumberQuantity =>
  quantity(
    'Whole bags to begin with',
    parts.reduce(
      (sum, { feed, kg }) => sum + costMinor(feed.price, bagsFor(kg, feed.bagKg), currency),
      0,
    ),
    'money',
    rationFormulas.toBegin,
    parts.map(({ feed, kg }) =>
      fromFarm(`Bags of ${lowerName(feed.name)}`, bagsFor(kg, feed.bagKg), 'bags', 'nᵢ'),
    ),
  );

const costPerKg = (parts: readonly Weighed[]): NumberQuantity =>
  quantity(
    'Your mix',
    parts.reduce((sum, { feed, share }) => sum + share * feed.minorPerKg, 0),
    'moneyPerKg',
    rationFormulas.cost,
    parts.flatMap(({ feed, share }) => [
      fromFarm(`${feed.name}, of the mix`, share, 'share', 'xᵢ'),
      fromFarm(`Price of ${lowerName(feed.name)}`, feed.minorPerKg, 'moneyPerKg', 'pᵢ'),
    ]),
  );
