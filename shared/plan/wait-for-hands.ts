import { dressedWeights, birdsToProcess, liveWeights } from './leaving-weights.js';
import type { PlanContext } from './context.js';
import { areHandsUnknown, handsOn } from './hands-of-day.js';
import { planFreezer } from './leaving-freezer.js';
import { birdsOfSettingUp, processingDays } from './processing-days.js';
import { stockingOf } from './stocking.js';

/**
 * Age to which birds that go by their weight are kept until there are hands for them: a day on which
 * nobody can process them is no reason for lighter birds. The first day from the one on which the
 * weight is reached, within a week, by which all can be done; the last such day where they can not.
 *
 * @returns undefined where they need not wait, where nobody has hands within the week, and where the
 *   household or a processor says when
 */
export function ageWithHands(context: PlanContext): number | undefined {
  if (!goesByWeight(context)) return undefined;
  const { life, dateOf, tables } = context;
  const birds = birdsToProcess(life);
  const few = Math.min(birds, tables.judgements.birds.leastADay.value);
  const spared = birdsOfSettingUp(context);
  // What others ask for on the day does not shift the life of the birds.
  const { choresOfOthers: _others, ...alone } = context;
  let room = 0;
  let roomLong = 0;
  let last: number | undefined;
  for (let later = 0; later < WEEK; later++) {
    const ageDays = life.lastAgeDays + later;
    if (0 < later && life.lastTableAgeDays < ageDays) break;
    const { most, mostLong } = handsOn(alone, dateOf(life.days - 1 + later));
    if (most < few) continue;
    last = ageDays;
    room += most;
    roomLong += mostLong;
    // As the days are planned: few birds more make a day longer, and no further one.
    if (birds <= room || (birds - spared <= room && birds <= roomLong)) break;
  }
  return last === life.lastAgeDays ? undefined : last;
}

const WEEK = 7;

const goesByWeight = (context: PlanContext): boolean => {
  const { batch, life } = context;
  return (
    life.targetReachedAgeDays !== undefined &&
    batch.processing !== 'hired' &&
    batch.slotDate === undefined &&
    batch.processingWeekday === undefined &&
    life.told?.overOn === undefined &&
    !areHandsUnknown(context)
  );
};

/** Days that birds are kept past the one on which they weigh what is wished; 0 where none. */
export function daysWaited(context: PlanContext): number {
  const { targetReachedAgeDays, lastAgeDays } = context.life;
  return goesByWeight(context) ? Math.max(0, lastAgeDays - targetReachedAgeDays!) : 0;
}

/** Whether birds that wait would no longer fit into pen or freezer, where they fit without. */
export const isTighter = (waiting: PlanContext, planned: PlanContext): boolean =>
  (isPenFull(waiting) && !isPenFull(planned)) ||
  (isFreezerFull(waiting) && !isFreezerFull(planned));

const isPenFull = (context: PlanContext): boolean =>
  stockingOf(context).some(({ fits, birds }) => fits !== undefined && fits.value < birds.value);

function isFreezerFull(context: PlanContext): boolean {
  const { leaving } = processingDays(context, birdsToProcess(context.life));
  const { packedAll } = dressedWeights(context, liveWeights(context, leaving));
  return 0 < planFreezer(context, packedAll).issues.length;
}
