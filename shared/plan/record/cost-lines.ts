import { costMinor } from '../../money/money.js';
import type { BatchPlan } from '../batch-plan.js';
import type { BatchSums } from './batch-sums.js';
import {
  dressedOfAll,
  liveOfAll,
  NO_DRESSED,
  NO_LIVE,
  notYet,
  without,
  type Closed,
} from './closed-batch.js';
import { line, type RecordLine } from './record-line.js';

/** What it cost: feed as opened at what was paid, processing of those processed, the rest as planned. */
export function costLines({ plan, sums, feed, isOver }: Closed): RecordLine[] {
  const { bill } = plan;
  const isFeed = new Set(plan.feed.phases.map(({ name }) => `${name} feed`));
  const rest = bill.lines.filter(({ label }) => !isFeed.has(label));
  const plannedRest = rest.reduce((sum, { cost }) => sum + (cost?.value ?? 0), 0);
  const restMinor = rest.reduce((sum, each) => sum + costAsItWas(each, sums, bill.currency), 0);
  const isFeedPriced = bill.lines.some(({ label, cost }) => isFeed.has(label) && cost);
  const plannedFeed = bill.total.value - plannedRest;
  const cost = feed?.costMinor === undefined ? undefined : restMinor + feed.costMinor;
  const actual = isOver ? cost : undefined;
  const needs = notYet(isOver) ?? (feed ? 'no price of feed is known' : 'no opened feed was told');
  const rests = [
    feed?.priceIs === 'planned' ? 'feed at the planned price' : 'feed as bought',
    'the rest as planned',
    ...bill.leftOut,
  ].join(', ');
  const liveKg = liveOfAll(sums);
  const dressedKg = dressedOfAll(sums);
  const each = (kg: number | undefined): number | undefined =>
    actual === undefined || kg === undefined ? undefined : actual / kg;
  return [
    line('feed-cost', 'Feed, what it cost', 'money', {
      planned: isFeedPriced ? plannedFeed : undefined,
      actual: isOver ? feed?.costMinor : undefined,
      missing: needs,
    }),
    line('cost', 'All of it, what it cost', 'money', {
      planned: bill.total.value,
      actual,
      missing: needs,
      note: rests,
    }),
    ...(plan.leaving
      ? [
          line('cost-live', 'Cost of live weight', 'moneyPerKg', {
            planned: bill.perKgLive?.value,
            actual: each(liveKg),
            missing: actual === undefined ? needs : NO_LIVE,
            note: without(sums),
          }),
          line('cost-dressed', 'Cost of dressed weight', 'moneyPerKg', {
            planned: bill.perKgDressed?.value,
            actual: each(dressedKg),
            missing: actual === undefined ? needs : NO_DRESSED,
            note: without(sums),
          }),
        ]
      : []),
  ];
}

/** Processing is paid by the bird: of those that were processed, where that was told. */
function costAsItWas(
  { label, price, cost }: BatchPlan['bill']['lines'][number],
  { processed }: BatchSums,
  currency: string,
): number {
  return label === 'Processing' && price !== undefined && 0 < processed
    ? costMinor(price, processed, currency)
    : (cost?.value ?? 0);
}
