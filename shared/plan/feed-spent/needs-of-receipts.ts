import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FeedProduct } from '../../farm/product.js';
import type { FeedClass } from '../feed-year/feed-classes.js';
import { isBagged, type ReceiptLine } from './receipt-lines.js';

/** One feed of the receipts, and what was eaten of it by day. */
export interface SpentFeed {
  readonly name: string;
  readonly product?: FeedProduct;
  readonly lines: readonly (ReceiptLine & { readonly eachKg: number })[];
  /** By day from the first receipt. */
  readonly needKg: Float64Array;
  /** It goes by the plans of the batches, not by even use. */
  readonly isByPlan: boolean;
}

interface Span {
  readonly from: PlainDate;
  readonly days: number;
  readonly maxDays: number;
}

/** Plans that ate this share of what was bought, at least and at most, say when it was eaten. */
const LIKE_PLAN = { least: 0.8, most: 1.25 };

/** Each feed of the receipts with the days on which it was eaten; all that was bought is eaten. */
export function needsOfReceipts(
  lines: readonly ReceiptLine[],
  classes: readonly FeedClass[],
  span: Span,
): SpentFeed[] {
  const byName = new Map<string, (ReceiptLine & { readonly eachKg: number })[]>();
  for (const line of lines)
    if (isBagged(line)) {
      const key = `${line.name.toLowerCase()} ${line.eachKg}`;
      byName.set(key, [...(byName.get(key) ?? []), line]);
    }
  return [...byName.values()].map((mine) => {
    const { name, product } = mine[0]!;
    const feed = product?.kind === 'feed' ? product : undefined;
    const planned = feed && plannedNeed(mine, classes, feed, span);
    return {
      ...{ name, lines: mine },
      ...(feed ? { product: feed } : {}),
      needKg: planned ?? evenNeed(mine, feed?.keepsDays ?? span.maxDays, span),
      isByPlan: planned !== undefined,
    };
  });
}

const weightOf = (lines: SpentFeed['lines']): number =>
  lines.reduce((sum, { amount, eachKg }) => sum + amount * eachKg, 0);

/** As the batches were fed of it by their plans, made as much as was bought; undefined where that is far off. */
function plannedNeed(
  lines: SpentFeed['lines'],
  classes: readonly FeedClass[],
  feed: FeedProduct,
  { from, days }: Span,
): Float64Array | undefined {
  const [of] = classes.filter(({ feeds }) => feeds.length === 1 && feeds[0]!.id === feed.id);
  if (!of) return undefined;
  const first = daysBetween(from, lines[0]!.on);
  const need = Float64Array.from({ length: days }, (_, day) => (day < first ? 0 : of.kg[day]!));
  const eaten = need.reduce((sum, kg) => sum + kg, 0);
  const share = eaten / weightOf(lines);
  if (share < LIKE_PLAN.least || LIKE_PLAN.most < share) return undefined;
  return need.map((kg) => kg / share);
}

/** Each purchase is used up evenly until the next, at most as long as it keeps. */
function evenNeed(lines: SpentFeed['lines'], keepsDays: number, { from, days }: Span) {
  const need = new Float64Array(days);
  const dates = [...new Set(lines.map(({ on }) => on))];
  dates.forEach((on, k) => {
    const kg = weightOf(lines.filter((line) => line.on === on));
    const day = daysBetween(from, on);
    const next = dates[k + 1];
    const before = dates[k - 1];
    // The last of it goes as fast as the one before.
    const lasts = next ? daysBetween(on, next) : before ? daysBetween(before, on) : keepsDays;
    const until = Math.min(days, day + Math.max(1, Math.min(keepsDays, lasts)));
    for (let at = day; at < until; at++) need[at]! += kg / (until - day);
  });
  return need;
}
