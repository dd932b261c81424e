import Big from 'big.js';
import { holding, type FactOf, type ToldFact } from '../../farm/told-fact.js';
import { minorDigits } from '../../units/format.js';
import type { PlannedOfBatch } from './planned-of-batch.js';
import { addDays, type PlainDate } from '../../calendar/plain-date.js';

/** Feed of a batch as it was opened, and what it cost. */
export interface OpenedFeed {
  readonly kg: number;
  /** Smallest coins; undefined where neither a price paid nor one planned is known. */
  readonly costMinor?: number;
  /** Whether the price is what was paid, or the planned one. */
  readonly priceIs: 'paid' | 'planned' | 'not-known';
}

/**
 * What the bags weigh and cost that were opened for a batch: at the average paid for feed from a year
 * before it came up to its end, where money and weight of a purchase were told, else at the planned
 * price. Exact, rounded half up once.
 *
 * @param facts of the whole farm
 * @param until purchases after this day do not count
 */
export function openedFeed(
  opened: readonly FactOf<'feed-opened'>[],
  facts: readonly ToldFact[],
  { plan, until }: { readonly plan: PlannedOfBatch; readonly until: PlainDate },
): OpenedFeed | undefined {
  if (opened.length === 0) return undefined;
  const bags = opened.map(({ on, details }) => {
    const phase = phaseOn(plan, on);
    return { kg: new Big(details.bags).times(details.bagKg ?? phase.bagKg), phase };
  });
  const kg = Number(bags.reduce((sum, each) => sum.plus(each.kg), new Big(0)));
  const paid = paidPerKg(facts, boughtFrom(plan.arrivalDate), until);
  const costs = bags.map((each) => {
    const perKg = paid ?? plannedPerKg(plan, each.phase);
    return perKg && each.kg.times(perKg);
  });
  if (costs.includes(undefined)) return { kg, priceIs: 'not-known' };
  const cost = costs.reduce<Big>((sum, each) => sum.plus(each!), new Big(0));
  return {
    kg,
    costMinor: Number(cost.times(10 ** minorDigits(plan.bill.currency)).round(0, Big.roundHalfUp)),
    priceIs: paid ? 'paid' : 'planned',
  };
}

/** The first day of purchases that say what a batch's feed cost: prices of years ago do not. */
export const boughtFrom = (arrivalDate: PlainDate): PlainDate => addDays(arrivalDate, -365);

type Phase = PlannedOfBatch['feed']['phases'][number];

function phaseOn({ feed }: PlannedOfBatch, on: PlainDate): Phase {
  return feed.phases.findLast(({ starts }) => String(starts.value) <= on) ?? feed.phases[0]!;
}

/** Major units for a kilogram of all feed that was bought with its weight and money. */
function paidPerKg(facts: readonly ToldFact[], from: PlainDate, until: PlainDate): Big | undefined {
  let [money, kg] = [new Big(0), new Big(0)];
  for (const fact of holding(facts)) {
    if (fact.kind !== 'bought' || fact.details.what !== 'feed') continue;
    if (fact.on < from || until < fact.on) continue;
    const { amount, eachKg, money: paid } = fact.details;
    if (eachKg === undefined || paid === undefined) continue;
    money = money.plus(paid);
    kg = kg.plus(new Big(amount).times(eachKg));
  }
  return kg.eq(0) ? undefined : money.div(kg);
}

function plannedPerKg({ bill }: PlannedOfBatch, { name, bagKg }: Phase): Big | undefined {
  const price = bill.lines.find(({ label }) => label === `${name} feed`)?.price;
  return price === undefined ? undefined : new Big(price).div(bagKg);
}
