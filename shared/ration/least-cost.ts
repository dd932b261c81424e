import type { LinearProgram, Row, Solve } from './linear-program.js';
import type { MixFeed } from './mix-feed.js';
import type { NutrientLimit } from './nutrient-limits.js';

type Feed = Pick<MixFeed, 'holds' | 'minorPerKg' | 'least' | 'most' | 'what'>;

/** The mix of least cost, as shares of one. */
export interface LeastCost {
  readonly shares: readonly number[];
  readonly minorPerKg: number;
  /** What each feed's price of a kg must fall by before it is used; below 0 where more would save. */
  readonly fallsBy: readonly number[];
  /** What one more of each limit (a percent of the mix, or a kcal a kg) costs a kg. */
  readonly worths: readonly number[];
}

/**
 * What is to cost least: a weight of the mix, or the growth it gives, which goes by its energy where
 * all else stands in proportion to that.
 */
export type CheapestBy = 'weight' | 'growth';

/** What a kg of a feed adds to a limit, less what a kg of the mix is asked for. */
export function overLimit(
  { holds }: Pick<Feed, 'holds'>,
  { nutrient, value, atKcalPerKg }: NutrientLimit,
): number {
  const asked = atKcalPerKg === undefined ? value : (value * holds.energyKcalPerKg) / atKcalPerKg;
  return holds[nutrient] - asked;
}

/**
 * The program of the mix that costs least: kg of each feed in one kg of mix, or in one of 1,000 kcal.
 * Limits of nutrients and shares hold for any weight of it, so that only the first row says how much.
 */
export function rationProgram(
  feeds: readonly Feed[],
  limits: readonly NutrientLimit[],
  by: CheapestBy,
): LinearProgram {
  const held = feeds.flatMap(({ least, most }, i): Row[] => {
    const over = (share: number): number[] => feeds.map((_, k) => (k === i ? 1 : 0) - share);
    if (least === most) return [{ weights: over(most), least: 0, most: 0 }];
    return [
      ...(0 < least ? [{ weights: over(least), least: 0 }] : []),
      ...(most < 1 ? [{ weights: over(most), most: 0 }] : []),
    ];
  });
  return {
    columns: feeds.map(({ minorPerKg }) => ({ cost: minorPerKg, least: 0, most: 1000 })),
    rows: [
      {
        weights: feeds.map(({ holds }) => (by === 'weight' ? 1 : holds.energyKcalPerKg / 1000)),
        least: 1,
        most: 1,
      },
      ...limits.map((limit): Row => ({
        weights: feeds.map((feed) => overLimit(feed, limit)),
        [limit.side]: 0,
      })),
      ...held,
    ],
  };
}

/** Finds the mix that costs least; nothing where no mix keeps every limit. */
export function leastCost(
  feeds: readonly Feed[],
  limits: readonly NutrientLimit[],
  { by, solve }: { readonly by: CheapestBy; readonly solve: Solve },
): LeastCost | undefined {
  if (feeds.length === 0) return undefined;
  const program = rationProgram(feeds, limits, by);
  const found = solve(program);
  if (!found) return undefined;
  const kg = found.amounts.reduce((sum, amount) => sum + amount, 0);
  const held = program.rows.slice(1 + limits.length);
  return {
    shares: found.amounts.map((amount) => amount / kg),
    minorPerKg: found.cost / kg,
    // What a feed is held to is worth what its row is worth.
    fallsBy: found.reducedCosts.map((cost, i) =>
      held.reduce(
        (sum, { weights }, k) =>
          0 < weights[i]! ? sum + found.worths[1 + limits.length + k]! : sum,
        cost,
      ),
    ),
    worths: found.worths.slice(1, 1 + limits.length),
  };
}

/**
 * The same without what the mix would hold next to nothing of, as far as it can do without: the
 * smallest is left out first, and the mix looked for anew.
 *
 * @param leastShares of the mix, by what a feed is: nobody fetches a bag for a handful
 */
export function leastCostOfBulk(
  feeds: readonly Feed[],
  limits: readonly NutrientLimit[],
  {
    leastShares,
    mayCostShare,
    ...how
  }: {
    readonly leastShares: Readonly<Partial<Record<Feed['what'], number>>>;
    /** What leaving one out may raise the cost by, as a part of it. */
    readonly mayCostShare: number;
    readonly by: CheapestBy;
    readonly solve: Solve;
  },
): LeastCost | undefined {
  const needed = new Set<number>();
  let used = feeds;
  let best = leastCost(used, limits, how);
  while (best) {
    const smallest = smallestOf(best.shares, (i, share) => {
      const { what, least } = used[i]!;
      return share < (leastShares[what] ?? 0) && least === 0 && !needed.has(i);
    });
    if (smallest === undefined) break;
    const without = used.map((feed, i) => (i === smallest ? { ...feed, most: 0 } : feed));
    const other = leastCost(without, limits, how);
    if (other && other.minorPerKg <= best.minorPerKg * (1 + mayCostShare))
      [used, best] = [without, other];
    else needed.add(smallest);
  }
  return best;
}

/** Below this a share is none. */
export const NONE = 1e-7;

function smallestOf(
  shares: readonly number[],
  counts: (i: number, share: number) => boolean,
): number | undefined {
  let smallest: number | undefined;
  shares.forEach((share, i) => {
    if (share <= NONE || !counts(i, share)) return;
    if (smallest === undefined || share < shares[smallest]!) smallest = i;
  });
  return smallest;
}
