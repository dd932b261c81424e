import Big from 'big.js';
import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { from, fromFarm, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { holding, type FactOf } from '../../farm/told-fact.js';
import { minorDigits } from '../../units/format.js';
import { feedPerGain } from '../../poultry/feed-per-gain.js';
import type { Tables } from '../../tables/tables.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { feedActualFormulas } from './feed-actual-formulas.js';
import { feedPlans, type FeedPlans } from './feed-plans.js';

/** Why feed cost more or less than planned; the parts add up to the difference, to the last coin. */
export interface FeedActual {
  readonly batchId: string;
  readonly name: string;
  /** From the first day on which a bag was opened to the last. */
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly used: NumberQuantity;
  readonly planned: NumberQuantity;
  readonly actual: NumberQuantity;
  readonly heads: NumberQuantity;
  readonly intake: NumberQuantity;
  readonly waste: NumberQuantity;
  readonly price: NumberQuantity;
  /** Of meat birds: feed for a kilogram gained in those days. */
  readonly conversion?: NumberQuantity;
  /** What they are still to eat from today on, as first planned and as it is planned by now. */
  readonly toCome?: { readonly planned: NumberQuantity; readonly now: NumberQuantity };
}

/** Fewer bags say little of what was eaten. */
const FEWEST_BAGS = 2;

/**
 * What the feed of each batch cost beside its plan, where bags were told as opened and have a price.
 *
 * @param planned the batches as they are planned by now
 */
export function feedActuals(
  picture: FarmPicture,
  tables: Tables,
  planned: readonly PlannedBatch[],
  bought: readonly FactOf<'bought'>[],
): FeedActual[] {
  return picture.batches.flatMap(({ id, name, arrivalDate }) => {
    const opened = (picture.feedOpenings ?? []).filter(
      ({ batchId, date }) => batchId === id && arrivalDate <= date,
    );
    const [first, last] = [opened[0]?.date, opened.at(-1)?.date];
    const emptied = opened.filter(({ date }) => date < last!);
    if (!first || !last || emptied.reduce((sum, { bags }) => sum + bags, 0) < FEWEST_BAGS)
      return [];
    const plans = feedPlans(picture, tables, id);
    const actual = plans && actualOf({ id, name, first, last }, plans, emptied, bought);
    if (!actual) return [];
    const now = planned.find((each) => each.id === id)?.plan;
    return [{ ...actual, ...(now ? toCome(plans.asOrdered, now, picture.today) : {}) }];
  });
}

/** What is still to be eaten, both at the prices of the first plan; left out where nothing is. */
function toCome(
  asOrdered: BatchPlan,
  now: BatchPlan,
  today: PlainDate,
): Pick<FeedActual, 'toCome'> {
  const end = addDays(today, TO_COME_DAYS);
  const first = today < asOrdered.arrivalDate ? asOrdered.arrivalDate : today;
  const [before, after] = [asOrdered, now].map((plan) => plannedMoney(plan, asOrdered, first, end));
  if (!before || !after || before.plus(after).eq(0)) return {};
  const { currency } = asOrdered.bill;
  const money = (label: string, of: Big, plan: BatchPlan, formula: Formula): NumberQuantity =>
    quantity(label, inMinor(of, currency), 'money', formula, [
      from(plan.feed.total),
      input('From', first, 'date'),
    ]);
  return {
    toCome: {
      planned: money('Still to come, as planned', before, asOrdered, feedActualFormulas.planned),
      now: money('Still to come', after, now, feedActualFormulas.toCome),
    },
  };
}

/** As far ahead as a year of feed is looked at. */
const TO_COME_DAYS = 365;

const inMinor = (major: Big, currency: string): number =>
  Number(major.times(10 ** minorDigits(currency)).round(0, Big.roundHalfUp));

type Opened = NonNullable<FarmPicture['feedOpenings']>[number];

function actualOf(
  { id, name, first, last }: { id: string; name: string; first: PlainDate; last: PlainDate },
  { asOrdered, withHeads, withWeights }: FeedPlans,
  emptied: readonly Opened[],
  bought: readonly FactOf<'bought'>[],
): FeedActual | undefined {
  const { currency } = asOrdered.bill;
  const minor = (major: Big): number => inMinor(major, currency);
  const money = (plan: BatchPlan): Big | undefined => plannedMoney(plan, asOrdered, first, last);
  const [planned0, planned1, planned2] = [asOrdered, withHeads, withWeights].map(money);
  const bags = emptied.map(({ date, bags: count, bagKg }) => {
    const phase = phaseOn(withWeights, date);
    const kg = new Big(count).times(bagKg ?? phase.bagKg);
    return { kg, planned: pricePerKg(asOrdered, phase.name), phase };
  });
  if (!planned0 || !planned1 || !planned2 || bags.some(({ planned }) => !planned)) return undefined;
  const paid = bags.map(({ kg, planned, phase }) =>
    kg.times(paidPerKg(bought, productOf(asOrdered, phase.name), last) ?? planned!),
  );
  const sum = (all: readonly Big[]): Big => all.reduce((a, b) => a.plus(b), new Big(0));
  const c0 = minor(planned0);
  const c1 = minor(planned1);
  const c2 = minor(planned2);
  const c3 = minor(sum(bags.map(({ kg, planned }) => kg.times(planned!))));
  const c4 = minor(sum(paid));
  const usedKg = Number(sum(bags.map(({ kg }) => kg)));
  const days = [input('From', first, 'date'), input('To', last, 'date')];
  const used = quantity('Feed used', usedKg, 'kg', feedActualFormulas.used, [
    ...days,
    fromFarm(
      'Bags',
      emptied.reduce((all, each) => all + each.bags, 0),
      'bags',
    ),
  ]);
  const part = (label: string, value: number, formula: Formula): NumberQuantity =>
    quantity(label, value, 'money', formula, [from(used), ...days]);
  return {
    ...{ batchId: id, name, from: first, to: last, used },
    planned: quantity('As planned', c0, 'money', feedActualFormulas.planned, [
      from(asOrdered.feed.total),
      ...days,
    ]),
    actual: part('As it was', c4, feedActualFormulas.actual),
    heads: part('More or fewer birds', c1 - c0, feedActualFormulas.heads),
    intake: part('Larger or smaller birds', c2 - c1, feedActualFormulas.intake),
    waste: part('Spilled, or eaten beyond their weight', c3 - c2, feedActualFormulas.waste),
    price: part('Dearer or cheaper feed', c4 - c3, feedActualFormulas.price),
    ...conversionOf(withWeights, used, first, last),
  };
}

/** Feed planned from one day to before another, at the prices of the plan as ordered. */
function plannedMoney(
  plan: BatchPlan,
  prices: BatchPlan,
  first: PlainDate,
  last: PlainDate,
): Big | undefined {
  const fed = plan.daily.find(({ id }) => id === 'feed-day')!.values;
  const skip = daysBetween(plan.arrivalDate, first);
  const days = daysBetween(first, last);
  let sum = new Big(0);
  for (let day = 0; day < days; day++) {
    const phase = plan.feed.phases.findLast(
      ({ starts }) => daysBetween(plan.arrivalDate, String(starts.value)) <= skip + day,
    )!;
    const price = pricePerKg(prices, phase.name);
    if (!price) return undefined;
    sum = sum.plus(price.times(fed[skip + day] ?? 0));
  }
  return sum;
}

const phaseOn = ({ feed }: BatchPlan, on: PlainDate) =>
  feed.phases.findLast(({ starts }) => String(starts.value) <= on) ?? feed.phases[0]!;

const lineOf = ({ bill }: BatchPlan, phase: string) =>
  bill.lines.find(({ label }) => label === `${phase} feed`);

const productOf = (plan: BatchPlan, phase: string): string | undefined =>
  lineOf(plan, phase)?.product;

function pricePerKg(plan: BatchPlan, phase: string): Big | undefined {
  const price = lineOf(plan, phase)?.price;
  const bagKg = plan.feed.phases.find(({ name }) => name === phase)?.bagKg;
  return price === undefined || bagKg === undefined ? undefined : new Big(price).div(bagKg);
}

/** Paid on average for a kilogram of a feed of that name, up to a day. */
function paidPerKg(
  bought: readonly FactOf<'bought'>[],
  product: string | undefined,
  until: PlainDate,
): Big | undefined {
  let [money, kg] = [new Big(0), new Big(0)];
  for (const { on, details } of holding(bought)) {
    const { what, name, amount, eachKg, money: paid } = details;
    if (what !== 'feed' || until < on || eachKg === undefined || paid === undefined) continue;
    if (name?.trim().toLowerCase() !== product?.trim().toLowerCase()) continue;
    money = money.plus(paid);
    kg = kg.plus(new Big(amount).times(eachKg));
  }
  return kg.eq(0) ? undefined : money.div(kg);
}

function conversionOf(
  plan: BatchPlan,
  used: NumberQuantity,
  first: PlainDate,
  last: PlainDate,
): { conversion?: NumberQuantity } {
  if (plan.purpose !== 'meat') return {};
  const series = (id: string) => plan.daily.find((each) => each.id === id)?.values;
  const weights = [series('weight-male'), series('weight-female')].flatMap((each) =>
    each ? [each] : [],
  );
  const alive = series('alive');
  if (!alive || weights.length === 0) return {};
  const flockKg = (on: PlainDate): number => {
    const day = Math.min(daysBetween(plan.arrivalDate, on), alive.length - 1);
    return (alive[day]! * weights.reduce((sum, each) => sum + each[day]!, 0)) / weights.length;
  };
  const [startKg, endKg] = [flockKg(first), flockKg(last)];
  const each = feedPerGain({ feedKg: used.value, startKg, endKg });
  if (each === undefined) return {};
  return {
    conversion: quantity('Feed for one gained', each, 'ratio', feedActualFormulas.conversion, [
      from(used, 'F'),
      input('Gained', endKg - startKg, 'kg', 'ΔW'),
    ]),
  };
}
