import { dailySeries, quantityOfDay, type DailySeries } from '../../explain/daily-series.js';
import {
  datedFact,
  from,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { BatchPlan } from '../batch-plan.js';
import { outsideFromDay, type PlanContext } from '../context.js';
import { costFormulas } from './cost-formulas.js';
import { leastFrom, netOf, nextMinor, stopCurve, type StopMoney } from './curve.js';
import { restsOn, type Made } from './made.js';
import { saidOfStop } from './said-of-stop.js';
import type { OtherDay, StopFeeding } from './stop-days.js';
import { stopWeeks, type StopWeek } from './stop-weeks.js';

export interface StopPart {
  /** Left out where something that the batch is made of has no price. */
  readonly stop?: StopFeeding;
  readonly weeks: readonly StopWeek[];
  /** By day after arrival: what the next of it costs, all of it, and how far off the best day is. */
  readonly daily: readonly DailySeries[];
  readonly said: readonly string[];
}

const DAYS_OF_WEEK = 7;

/**
 * When to stop feeding meat birds: the day on which their meat costs least, what a week less or more
 * does, and a line a week. Undefined for layers, and of birds that are gone.
 *
 * @param allCosts all costs of the plan as it is, with what the household counts beside the bill
 */
export function stopFeeding(
  context: PlanContext,
  plan: BatchPlan,
  allCosts: NumberQuantity,
): StopPart | undefined {
  if (!plan.leaving || context.life.told?.overOn !== undefined) return undefined;
  const curve = stopCurve(context, plan, allCosts.value);
  const made = { context, plan, curve, allCosts };
  const weeks = stopWeeks(made);
  if (!curve.money) return { weeks, daily: [], said: saidOfStop(made, { weeks }) };
  const net = netOf(curve);
  const bestDay = leastFrom(curve, net);
  const daily = seriesOf(made, curve.money, bestDay);
  const stop = stopOf(made, curve.money, { bestDay, daily });
  return { stop, weeks, daily, said: saidOfStop(made, { stop, weeks }) };
}

function seriesOf(made: Made, money: StopMoney, bestDay: number): readonly DailySeries[] {
  const { curve, allCosts } = made;
  const { dressedKg } = curve;
  const { inputs, options } = restsOn(made);
  const outside = outsideFromDay(curve.longer);
  const net = netOf(curve);
  const series = (
    id: string,
    label: string,
    unit: 'moneyPerKg' | 'money',
    formula: (typeof costFormulas)[keyof typeof costFormulas],
    valueOf: (day: number) => number,
  ): DailySeries =>
    dailySeries(
      id,
      label,
      unit,
      formula,
      Array.from(dressedKg, (_, day) => valueOf(day)),
      [from(allCosts, 'C'), ...inputs],
      { rows: options.rows!, outside },
    );
  return [
    series(
      'next-kg',
      'What they gain next costs, dressed',
      'moneyPerKg',
      costFormulas.nextKg,
      (day) => nextMinor(curve, money, day),
    ),
    series('each-kg', 'All of the meat costs, dressed', 'moneyPerKg', costFormulas.eachKg, (day) =>
      0 < dressedKg[day]! ? money.allMinor[day]! / dressedKg[day]! : 0,
    ),
    series('off-best', 'Costs more than on the best day', 'money', costFormulas.offBest, (day) =>
      0 < dressedKg[day]! ? (net(day) - net(bestDay)) * dressedKg[day]! : 0,
    ),
  ];
}

function stopOf(
  made: Made,
  money: StopMoney,
  { bestDay, daily }: { bestDay: number; daily: readonly DailySeries[] },
): StopFeeding {
  const { context, curve, allCosts } = made;
  const { dateOf, arrivalAge, last } = daysOf(made);
  const net = netOf(curve);
  const { inputs, options } = restsOn(made);
  const each = quantityOfDay(daily, 'each-kg', bestDay) as NumberQuantity;
  const dated = (
    label: string,
    day: number,
    formula: (typeof costFormulas)[keyof typeof costFormulas],
    more: readonly QuantityInput[] = [],
  ): Quantity =>
    datedFact(
      label,
      dateOf(day),
      formula,
      [
        input('Age', arrivalAge + day, 'day'),
        from(allCosts, 'C', 'All costs of the plan'),
        ...more,
        ...inputs,
      ],
      { ...options, outside: each.outside },
    );
  const other = (label: string, day: number): OtherDay => ({
    on: dated(label, day, costFormulas.offBest),
    costs: {
      ...(quantityOfDay(daily, 'off-best', day) as NumberQuantity),
      label: `${label}: costs more by`,
    },
    weight: quantity(
      `${label}: dressed weight against the best day’s`,
      curve.dressedKg[day]! - curve.dressedKg[bestDay]!,
      'kg',
      costFormulas.eachKg,
      [
        input('That day', curve.dressedKg[day]!, 'kg'),
        input('The best day', curve.dressedKg[bestDay]!, 'kg'),
        ...inputs,
      ],
      options,
    ),
  });
  const share = context.tables.judgements.birds.stopAsGood;
  const isAsGood = (day: number): boolean =>
    net(day) - net(bestDay) <= (share.value * money.allMinor[bestDay]!) / curve.dressedKg[bestDay]!;
  let [goodFrom, goodTo] = [bestDay, bestDay];
  while (curve.firstDay < goodFrom && isAsGood(goodFrom - 1)) goodFrom--;
  while (goodTo < last && isAsGood(goodTo + 1)) goodTo++;
  return {
    best: dated('Best day to process', bestDay, costFormulas.best, [from(each, 'c')]),
    bestAge: quantity('Age then', arrivalAge + bestDay, 'day', costFormulas.best, inputs, options),
    eachAtBest: { ...each, label: 'All of the meat costs, dressed' },
    goodFrom: dated('As good from', goodFrom, costFormulas.asGood, [fromJudgement(share, 's')]),
    goodTo: dated('As good until', goodTo, costFormulas.asGood, [fromJudgement(share, 's')]),
    weekEarly: other('A week early', Math.max(curve.firstDay, bestDay - DAYS_OF_WEEK)),
    weekLate: other('A week late', Math.min(last, bestDay + DAYS_OF_WEEK)),
    planned: other('The day in the plan', curve.plannedDay),
    ...paysUntilOf(made, money, dated),
  };
}

/** The last day on which a day more still adds more than it costs, at the household's price. */
function paysUntilOf(
  { curve }: Made,
  { allMinor, priceMinor }: StopMoney,
  dated: (label: string, day: number, formula: (typeof costFormulas)['paysUntil']) => Quantity,
): Pick<StopFeeding, 'paysUntil'> {
  if (priceMinor.every((price) => price === undefined)) return {};
  const day = leastFrom(
    curve,
    (at) => allMinor[at]! - (priceMinor[at] ?? 0) * curve.dressedKg[at]!,
  );
  return { paysUntil: dated('Feed pays for itself until', day, costFormulas.paysUntil) };
}

const daysOf = ({ curve: { longer, dressedKg } }: Made) => ({
  dateOf: longer.dateOf,
  arrivalAge: longer.life.arrivalAgeDays,
  // The last day that is followed eats nothing.
  last: dressedKg.length - 2,
});
