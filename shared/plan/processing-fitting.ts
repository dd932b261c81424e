import type { PlanContext } from './context.js';
import { planContext } from './plan-context.js';
import { planFeed } from './feed.js';
import { birdsToProcess, liveWeights } from './leaving-weights.js';
import { processingDays, type ProcessingDays } from './processing-days.js';
import { sayDays } from './processing-words.js';
import type { ProcessingWay } from './processing-way.js';

/** Weeks past the planned age that birds are grown on, at most: past these they only eat. */
const MOST_WEEKS_ON = 4;

/**
 * The last of them processed some weeks later, so that more weekends lie between the first and the
 * last: the fewest weeks that hold all, with what they eat and weigh over the plan as it is. None
 * where a slot decides, or no span is long enough.
 *
 * @param most what is to be none: birds left, or past the hours of days that are not long ones
 */
export function growingOn(context: PlanContext, most: 'left' | 'over'): ProcessingWay[] {
  const { batch, life, say } = context;
  if (batch.slotDate !== undefined) return [];
  for (let weeks = 1; weeks <= MOST_WEEKS_ON; weeks++) {
    const leaveAgeDays = life.lastAgeDays + 7 * weeks;
    const later = { ...batch, leaveAgeDays, targetLiveKg: undefined };
    const grown = planContext({ ...context, batch: withoutTarget(later) });
    const days = processingDays(grown, birdsToProcess(grown.life));
    if (0 < days[most]) continue;
    const fed = planFeed(grown).part.total.value - planFeed(context).part.total.value;
    const was = life.meanWeightKg[life.days - 1]!;
    const { liveEach } = liveWeights(grown, days.leaving);
    return [
      {
        id: 'grow-on',
        words: `Grow the last ones on for ${say(7 * weeks, 'day')}: ${sayDays(context, days.days)}. ${sayFeed(context, fed)}; they weigh ${say(liveEach.value, 'kg')} live on average instead of ${say(was, 'kg')}`,
        chosenBy: { leaveAgeDays, targetLiveKg: undefined },
      },
    ];
  }
  return [];
}

const sayFeed = ({ say }: PlanContext, kg: number): string =>
  0 < kg ? `That is ${say(kg, 'kg')} more feed` : `That is ${say(-kg, 'kg')} less feed`;

/** The batch as it is, its age chosen and not its weight. */
function withoutTarget<T extends { readonly targetLiveKg?: number | undefined }>(
  batch: T,
): Omit<T, 'targetLiveKg'> {
  const { targetLiveKg: _target, ...rest } = batch;
  return rest;
}

/**
 * The most birds that the hands can do on these days; none once they are ordered or have come, nor
 * where that is a handful.
 *
 * @param able birds that the days have hands for
 * @param most what is to be none: birds left, or past the hours of days that are not long ones
 */
export function raisingFewer(
  context: PlanContext,
  able: number,
  most: 'left' | 'over',
): ProcessingWay[] {
  const { batch, today } = context;
  if (batch.orderedBirds !== undefined || batch.arrivalDate <= today) return [];
  const { leastADay } = context.tables.judgements.birds;
  const start = Math.min(batch.wantedBirds - 1, able + leastADay.value);
  for (let wantedBirds = start; leastADay.value <= wantedBirds; wantedBirds--) {
    const fewer = planContext({ ...context, batch: { ...batch, wantedBirds } });
    const days: ProcessingDays = processingDays(fewer, birdsToProcess(fewer.life));
    if (0 < days[most]) continue;
    return [
      {
        id: 'fewer',
        words: `Raise ${wantedBirds} instead of ${batch.wantedBirds}: ${sayDays(context, days.days)}`,
        chosenBy: { wantedBirds },
      },
    ];
  }
  return [];
}
