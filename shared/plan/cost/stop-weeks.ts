import {
  datedFact,
  from,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { growthFormulas } from '../../poultry/growth.js';
import { processingFormulas } from '../../poultry/processing.js';
import { outsideFromDay } from '../context.js';
import { feedFormulas } from '../feed.js';
import { costFormulas } from './cost-formulas.js';
import { nextMinor } from './curve.js';
import { restsOn, type Made } from './made.js';
import { billByDay } from './weeks-of-bill.js';

/** A week of the birds' lives, up to the morning of the day it ends on. */
export interface StopWeek {
  readonly ageDays: number;
  readonly on: Quantity;
  readonly liveEach: NumberQuantity;
  readonly dressedEach: NumberQuantity;
  /** Feed of the flock in the week. */
  readonly feed: NumberQuantity;
  readonly conversion?: NumberQuantity;
  /** Cost of the week; left out past the plan, where the week is feed alone. */
  readonly cost?: NumberQuantity;
  readonly soFar?: NumberQuantity;
  /** What the next of it costs, dressed; from the first age at which birds are processed. */
  readonly next?: NumberQuantity;
  /** The day in the plan: its cost so far is the whole bill. */
  readonly isPlanned: boolean;
  /** Past the day in the plan: what it would be if they were kept on. */
  readonly isBeyond: boolean;
}

const WEEK = 7;
/** A week that ends so near the day of the plan has no line beside its. */
const NEAR_DAYS = 4;
/** Weeks that are shown past the plan. */
const WEEKS_ON = 3;

/** A line a week from the arrival to some weeks past the plan; the day of the plan has a line of its own. */
export function stopWeeks(made: Made): readonly StopWeek[] {
  const { context, plan, curve } = made;
  const { plannedDay, longer, money } = curve;
  const age = longer.life.arrivalAgeDays;
  const plannedAge = age + plannedDay;
  const ends = [plannedAge];
  for (let at = WEEK; at <= plannedAge + WEEKS_ON * WEEK; at += WEEK)
    if (age < at && NEAR_DAYS <= Math.abs(at - plannedAge) && at < age + curve.dressedKg.length - 1)
      ends.push(at);
  ends.sort((a, b) => a - b);
  const bill = billByDay(context, plan);
  const { inputs, options } = restsOn(made);
  const outside = outsideFromDay(longer);
  const fed = plan.daily.find(({ id }) => id === 'feed-day')?.values ?? [];
  const { life, dateOf } = longer;
  let before = 0;
  let soFar = 0;
  let hadKg = life.aliveAll[0]! * life.meanWeightKg[0]!;
  return ends.map((ageDays): StopWeek => {
    const day = ageDays - age;
    const isPlanned = day === plannedDay;
    const isBeyond = plannedDay < day;
    const opened = {
      ...options,
      ...(outside && outside.fromDay <= day ? { outside: outside.text } : {}),
    };
    const feedKg = sumOf(isBeyond ? curve.feedKg : fed, before, day);
    // Of those that the plan processes early the feed is gone, and so is what they would have gained.
    const eatenKg = sumOf(curve.feedKg, before, day);
    const heldKg = life.aliveAll[day]! * life.meanWeightKg[day]!;
    const gained = heldKg - hadKg;
    const feed = quantity(
      `Feed up to ${ageDays} days`,
      feedKg,
      'kg',
      feedFormulas.phaseTotal,
      inputs,
      opened,
    );
    const at = input('Age', ageDays, 'day', 't');
    const costMinor = isBeyond
      ? money && Math.round(sumOf(money.feedMinor, plannedDay, day)) + plan.bill.total.value - soFar
      : sumOf(bill, before, isPlanned ? day + 1 : day);
    const week: StopWeek = {
      ageDays,
      isPlanned,
      isBeyond,
      on: datedFact('Day', dateOf(day), processingFormulas.leaveDate, [at]),
      liveEach: quantity(
        'Live weight each',
        life.meanWeightKg[day]!,
        'kg',
        growthFormulas.weight,
        [at, ...inputs],
        opened,
      ),
      dressedEach: quantity(
        'Dressed weight each',
        curve.dressedEachKg[day]!,
        'kg',
        processingFormulas.dressed,
        [at, ...inputs],
        opened,
      ),
      feed,
      ...(0 < gained
        ? {
            conversion: quantity(
              'Feed for what was gained',
              eatenKg / gained,
              'ratio',
              costFormulas.weekConversion,
              [
                input('Feed, all birds', eatenKg, 'kg', 'F'),
                input('Gained, all birds', gained, 'kg', 'ΔW'),
              ],
              opened,
            ),
          }
        : {}),
      ...(costMinor === undefined ? {} : costs(costMinor, isBeyond, opened)),
      ...(money && curve.firstDay <= day && 0 < nextMinor(curve, money, day)
        ? {
            next: quantity(
              'What they gain next costs, dressed',
              nextMinor(curve, money, day),
              'moneyPerKg',
              costFormulas.nextKg,
              [
                input('Feed of the day', curve.feedKg[day]!, 'kg', 'F'),
                input('Cost of the day', money.dayMinor[day]!, 'money'),
                input('Dressed, all birds', curve.dressedKg[day]!, 'kg'),
                input('A day later', curve.dressedKg[day + 1]!, 'kg'),
                ...inputs,
              ],
              opened,
            ),
          }
        : {}),
    };
    before = day;
    hadKg = heldKg;
    return week;
  });

  function costs(
    minor: number,
    isBeyond: boolean,
    opened: typeof options,
  ): Pick<StopWeek, 'cost' | 'soFar'> {
    soFar += minor;
    const formula = isBeyond ? costFormulas.keptOn : undefined;
    const bill = from(plan.bill.total, 'C');
    return {
      cost: quantity(
        'Cost of the week',
        minor,
        'money',
        formula ?? costFormulas.week,
        [bill],
        opened,
      ),
      soFar: quantity('Cost so far', soFar, 'money', formula ?? costFormulas.soFar, [bill], opened),
    };
  }
}

function sumOf(values: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i] ?? 0;
  return sum;
}
