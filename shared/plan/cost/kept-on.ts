import type { Batch } from '../../farm/batch.js';
import type { PlanContext } from '../context.js';
import { planContext } from '../plan-context.js';
import { bagOf } from '../prices.js';
import Big from 'big.js';
import { minorDigits } from '../../units/format.js';

/** Days past the plan, the usual age and the growth table that birds are followed to. */
const DAYS_ON = 28;

/**
 * The same birds if nobody processed them: as many, with the same losses a day, on the feed of each
 * age, four weeks past all that is planned or printed.
 */
export function keptOn(context: PlanContext): PlanContext {
  const { batch, life } = context;
  const leaveAgeDays =
    Math.max(life.lastAgeDays, life.strain.leave.ageDays, life.lastTableAgeDays) + DAYS_ON;
  const {
    slotDate: _slot,
    slotBirds: _birds,
    processingWeekday: _weekday,
    targetLiveKg: _target,
    skipsLastFeed: _skips,
    ...rest
  } = batch;
  const days = leaveAgeDays - life.arrivalAgeDays;
  return planContext({
    ...context,
    batch: {
      ...rest,
      orderedBirds: life.placed,
      leaveAgeDays,
      ...lossOver(batch, life.days - 1, days),
    },
  });
}

/** A loss that the household gave is meant for its days: over more of them as many die a day. */
function lossOver({ laterLossPercent }: Batch, days: number, longer: number): Partial<Batch> {
  if (laterLossPercent === undefined) return {};
  const more = (longer - 7) / (Math.max(8, days) - 7);
  return { laterLossPercent: 100 * (1 - (1 - laterLossPercent / 100) ** more) };
}

/** What a kilogram of the feed of each day costs, minor units; undefined where one has no price. */
export function feedPrices(context: PlanContext): Float64Array | undefined {
  const { life, phases, farm } = context;
  const byDay = new Float64Array(life.days);
  for (const { phase, fromAgeDays, toAgeDays } of phases) {
    const { price, bagKg } = bagOf(context, phase.id);
    if (price === undefined) return undefined;
    const minor = new Big(price.price)
      .times(10 ** minorDigits(farm.currency))
      .div(bagKg)
      .toNumber();
    byDay.fill(minor, fromAgeDays - life.arrivalAgeDays, toAgeDays - life.arrivalAgeDays);
  }
  return byDay;
}
