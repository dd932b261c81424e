import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { facilityOf, type FeedStore } from '../farm/facility.js';
import { bagsFor } from '../money/money.js';
import type { Sourced } from '../explain/formula.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';

export const deliveryFormulas = {
  bags: {
    id: 'feed-bags',
    title: 'Whole bags',
    words:
      'Running total of the product divided by the weight of a bag, rounded up once, less the bags bought before.',
    symbols: 'b = ⌈F_total ÷ bag⌉ − b_before',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  buyBy: {
    id: 'feed-buy-by',
    title: 'Buy by',
    words: 'First day the delivery is fed, less five days in hand.',
    symbols: 'D = first use − 5 days',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface FeedDelivery {
  readonly buyBy: Quantity;
  readonly firstUse: PlainDate;
  readonly lastUse: PlainDate;
  readonly bags: NumberQuantity;
}

/**
 * Cuts a phase into deliveries that stay fresh and fit the store. What is left at the end of a phase
 * comes with the one before it, where that still keeps: nobody drives twice for it.
 */
export function deliveriesOf(
  context: PlanContext,
  flockFeedKg: Float64Array,
  phase: { from: number; to: number; name: string },
  { bagKg, bagInput, rows }: { bagKg: number; bagInput: QuantityInput; rows: readonly Sourced[] },
): FeedDelivery[] {
  const { tables, facilities, batch, dateOf } = context;
  const keep = tables.feedKeeping;
  const store = facilityOf(facilities, 'feed-store', batch.feedStoreId);
  const deliveries: FeedDelivery[] = [];
  let start = phase.from;
  let fedKg = 0;
  let bagsBefore = 0;
  while (start < phase.to) {
    let end = start;
    let kg = 0;
    const mostDays = phase.to - start <= keep.high ? keep.high : keep.maxDays;
    while (end < phase.to && end - start < mostDays) {
      const next = kg + flockFeedKg[end]!;
      if (isSmall(store, next) && start < end) break;
      kg = next;
      end++;
    }
    fedKg += kg;
    const bags = bagsFor(fedKg, bagKg) - bagsBefore;
    bagsBefore += bags;
    const firstUse = dateOf(start);
    if (0 < bags) {
      deliveries.push({
        buyBy: datedFact(
          `Buy ${phase.name} by`,
          addDays(firstUse, -keep.bagLeadDays),
          deliveryFormulas.buyBy,
          [
            input('First fed', firstUse, 'date'),
            fromTable(keep, 'In hand', keep.bagLeadDays, 'day'),
            fromTable(keep, 'Longest kept', keep.maxDays, 'day'),
            fromTable(keep, 'Kept, by careful advice', keep.low, 'day'),
            fromTable(keep, 'Kept at the very most', keep.high, 'day'),
            ...(store ? [input('Feed store holds', store.capacityKg, 'kg')] : []),
          ],
        ),
        firstUse,
        lastUse: dateOf(end - 1),
        bags: quantity(
          `${phase.name} bags`,
          bags,
          'bags',
          deliveryFormulas.bags,
          [input('Fed from this delivery', kg, 'kg'), bagInput],
          { rows },
        ),
      });
    }
    start = end;
  }
  return deliveries;
}

/** Whether a store is known to hold less. One that nobody measured sends nobody on a second trip. */
const isSmall = (store: FeedStore | undefined, kg: number): boolean =>
  store !== undefined && !store.assumed?.includes('capacityKg') && store.capacityKg < kg;

/** Says when the feed store cannot hold a single bag. */
export function storeTooSmall({ facilities, batch }: PlanContext, bagKg: number): PlanIssue[] {
  const store = facilityOf(facilities, 'feed-store', batch.feedStoreId);
  return store && store.capacityKg < bagKg
    ? [
        issue(
          'act',
          'store-too-small',
          `The feed store ${store.name} holds less than one bag. Find another dry place, or smaller bags.`,
        ),
      ]
    : [];
}
