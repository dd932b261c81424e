import { LEAST_LEAVE_AGE_DAYS } from '../../farm/batch-rules.js';
import type { BatchPlan } from '../batch-plan.js';
import { careOf } from '../chore-hours.js';
import type { PlanContext } from '../context.js';
import { birdsToProcess } from '../leaving-weights.js';
import { processingDays } from '../processing-days.js';
import { feedPrices, keptOn } from './kept-on.js';
import { hourRate, meatPrices, type PriceByWeight } from './own-costs.js';
import { minorDigits } from '../../units/format.js';

/** What the same birds weigh and cost if all are processed on one day, the arrival day first. */
export interface StopCurve {
  readonly longer: PlanContext;
  /** First day that is looked at: nobody processes a chick. */
  readonly firstDay: number;
  /** The day in the plan. */
  readonly plannedDay: number;
  /** Dressed weight of all birds, kg. */
  readonly dressedKg: Float64Array;
  readonly dressedEachKg: Float64Array;
  /** Feed of the flock in the day, kg. */
  readonly feedKg: Float64Array;
  /** Undefined where a feed, or another part of the bill, has no price. */
  readonly money: StopMoney | undefined;
}

export interface StopMoney {
  /** All costs up to processing on the day, minor units. */
  readonly allMinor: Float64Array;
  /** What the flock eats in the day. */
  readonly feedMinor: Float64Array;
  /** What that day more costs: feed, and the hours of its chores where they count. */
  readonly dayMinor: Float64Array;
  /** Price of a kilogram of birds as large as they are that day; undefined without one. */
  readonly priceMinor: readonly (number | undefined)[];
}

/**
 * @param allMinor all costs of the plan as it is: the bill and what the household counts beside it
 */
export function stopCurve(context: PlanContext, plan: BatchPlan, allMinor: number): StopCurve {
  const { life } = context;
  const leaving = plan.leaving!;
  const longer = keptOn(context);
  // Split among days, the last birds may be gone before the day of their age.
  const plannedDay = processingDays(context, birdsToProcess(life)).leaving.at(-1)!.index;
  const all = longer.life;
  const share = leaving.dressedEach.value / leaving.liveEach.value;
  // The plan counts whole birds, on whatever day they are processed.
  const birds = leaving.birdsToProcess / all.aliveAll[plannedDay]!;
  const eachKg = all.meanWeightKg.map((kg) => kg * share);
  return {
    longer,
    plannedDay,
    firstDay: Math.min(plannedDay, Math.max(0, LEAST_LEAVE_AGE_DAYS - all.arrivalAgeDays)),
    dressedKg: eachKg.map((kg, day) => kg * birds * all.aliveAll[day]!),
    dressedEachKg: eachKg,
    feedKg: all.flockFeedKg,
    money: plan.bill.perBird && moneyOf(context, longer, { plan, plannedDay, allMinor, eachKg }),
  };
}

function moneyOf(
  context: PlanContext,
  longer: PlanContext,
  of: { plan: BatchPlan; plannedDay: number; allMinor: number; eachKg: Float64Array },
): StopMoney | undefined {
  const { plan, plannedDay, allMinor, eachKg } = of;
  const prices = feedPrices(longer);
  if (!prices) return undefined;
  const { life, dateOf, farm } = longer;
  const rate = Number(hourRate(context) ?? 0) * 10 ** minorDigits(farm.currency);
  const care = careOf(longer);
  const feedMinor = life.flockFeedKg.map((kg, day) => kg * prices[day]!);
  const dayMinor =
    rate === 0 ? feedMinor : feedMinor.map((minor, day) => minor + rate * care(dateOf(day)));
  const upTo = new Float64Array(life.days);
  for (let day = 1; day < life.days; day++) upTo[day] = upTo[day - 1]! + dayMinor[day - 1]!;
  const fed = plan.daily.find(({ id }) => id === 'feed-day')?.values ?? [];
  // Birds that the plan processes some days early eat on with the others here.
  let onOneDay = allMinor;
  for (let day = 0; day < plannedDay; day++)
    onOneDay += (life.flockFeedKg[day]! - (fed[day] ?? 0)) * prices[day]!;
  const priceOf: PriceByWeight = meatPrices(context);
  return {
    feedMinor,
    dayMinor,
    allMinor: upTo.map((minor) => onOneDay + minor - upTo[plannedDay]!),
    priceMinor: Array.from(eachKg, priceOf),
  };
}

/** What a kilogram costs less what it brings, by day: the least is best. */
export const netOf = ({ dressedKg, money }: StopCurve): ((day: number) => number) => {
  const { allMinor, priceMinor } = money!;
  return (day) => allMinor[day]! / dressedKg[day]! - (priceMinor[day] ?? 0);
};

/** The day from the first one on for which a function is least. */
export function leastFrom({ firstDay, dressedKg }: StopCurve, of: (day: number) => number): number {
  let best = firstDay;
  // The last day of the birds that are followed eats nothing: it is no day more.
  for (let day = firstDay; day < dressedKg.length - 1; day++) if (of(day) < of(best)) best = day;
  return best;
}

/** What the next kilogram costs on a day; 0 on the last one, and where nothing is gained. */
export function nextMinor({ dressedKg }: StopCurve, money: StopMoney, day: number): number {
  const gain = (dressedKg[day + 1] ?? 0) - dressedKg[day]!;
  return 0 < gain ? money.dayMinor[day]! / gain : 0;
}
