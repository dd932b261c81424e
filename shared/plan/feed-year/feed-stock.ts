import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FeedOpening } from '../../farm/feed-opening.js';
import type { FeedProduct } from '../../farm/product.js';
import { holding, type FactOf } from '../../farm/told-fact.js';

/** A feed as it lies in the store: one of the place, or a phase that no feed of the place is bought for. */
export type StoredFeed = Pick<
  FeedProduct,
  'id' | 'name' | 'bagKg' | 'keepsDays' | 'storeBags' | 'storeOn'
>;

/** Feed of one kind that came on a day, kg. */
export interface FeedLot {
  readonly feed: StoredFeed;
  readonly on: PlainDate;
  readonly kg: number;
  /** Somebody counted it; what was told as bought is taken as eaten once it is too old. */
  readonly isCounted?: true;
}

const sameName = (a: string, b: string): boolean =>
  a.trim().toLowerCase() === b.trim().toLowerCase();

/**
 * What came into the store of each feed: the bags that were counted last, and what was told as bought
 * since, by the name of the feed.
 */
export function feedLots(
  feeds: readonly StoredFeed[],
  facts: readonly FactOf<'bought'>[],
  today: PlainDate,
): { lots: FeedLot[]; unknown: number } {
  const bought = holding(facts).filter(({ on, details }) => details.what === 'feed' && on <= today);
  let unknown = bought.length;
  const lots = feeds.flatMap((feed): FeedLot[] => {
    const { storeBags, storeOn, bagKg } = feed;
    const isCounted = storeBags !== undefined && storeOn !== undefined && storeOn <= today;
    const mine = bought.filter(({ details }) => sameName(details.name ?? '', feed.name));
    unknown -= mine.length;
    return [
      ...(isCounted
        ? [{ feed, on: storeOn, kg: storeBags * bagKg, isCounted: true } as const]
        : []),
      ...mine
        .filter(({ on }) => !isCounted || storeOn < on)
        .map(({ on, details }) => ({ feed, on, kg: details.amount * (details.eachKg ?? bagKg) })),
    ];
  });
  return { lots: lots.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)), unknown };
}

/**
 * Fed since a day, kg: by the bags that were opened, of which the last is in use; else as planned.
 *
 * @param plannedKg fed as planned from one day to before another
 */
export function fedSinceKg(
  openings: readonly (FeedOpening & { readonly kg: number })[],
  since: PlainDate,
  plannedKg: (from: PlainDate) => number,
): number {
  const opened = openings.filter(({ date }) => since <= date);
  const last = opened.at(-1);
  if (!last) return plannedKg(since);
  const before = opened.filter(({ date }) => date < last.date);
  const open = opened.filter(({ date }) => date === last.date);
  const sum = (of: typeof opened): number => of.reduce((all, { kg }) => all + kg, 0);
  return sum(before) + Math.min(sum(open), plannedKg(last.date));
}

/**
 * What is left of lots, the oldest fed first. Each is fed only from its own day on: what was fed
 * before and no lot held was bought untold.
 *
 * @param lots by day
 * @param fedSince fed from a day to today, kg
 */
export function leftOf(
  lots: readonly FeedLot[],
  fedSince: (since: PlainDate) => number,
): FeedLot[] {
  const left = lots.map(({ kg }) => kg);
  const fed = lots.map(({ on }) => fedSince(on));
  lots.forEach((_, k) => {
    let kg = Math.max(0, fed[k]! - (fed[k + 1] ?? 0));
    for (let i = 0; i <= k; i++) {
      const taken = Math.min(left[i]!, kg);
      left[i]! -= taken;
      kg -= taken;
    }
  });
  return lots.flatMap((lot, k) => (left[k]! < LEAST_KG ? [] : [{ ...lot, kg: left[k]! }]));
}

/** Less is what sticks to the bag. */
const LEAST_KG = 0.05;

/** The last day from today on which a lot is fed. */
export const untilDay = (lot: FeedLot, today: PlainDate, keepsDays: number): number =>
  keepsDays - daysBetween(lot.on, today);
