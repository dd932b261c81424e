import { hatchesHere, isStarted } from '../../farm/batch-origin.js';
import type { Batch } from '../../farm/batch.js';
import type { ToldFact } from '../../farm/told-fact.js';
import type { BatchPlan } from '../batch-plan.js';

/**
 * What to do about young birds that were dead in the box, and whether so many are usual: the early
 * loss that a plan reckons with is of a whole first week. Nothing of what hatched here. That the
 * seller wants to hear the same day is common practice, no source. Told on a later day, what is for
 * the day of the box is left out.
 *
 * @param before the plan of the batch without the fact: its losses are those of its strain
 */
export function deadInBox(
  fact: ToldFact,
  batch: Pick<Batch, 'origin'>,
  { birds: { chicksPlaced, lostFirstWeek }, today }: Pick<BatchPlan, 'birds' | 'today'>,
): string[] {
  if (fact.kind !== 'arrived' || hatchesHere(batch) || isStarted(batch)) return [];
  const { birds, dead = 0 } = fact.details;
  if (dead === 0) return [];
  const usual = Math.round((birds * lostFirstWeek.value) / Math.max(1, chicksPlaced.value));
  const lost = `of ${birds}, about ${usual} ${usual === 1 ? 'is' : 'are'} lost in the whole first week`;
  const isOfToday = today <= fact.on;
  return [
    isOfToday
      ? 'Tell the hatchery today, with photos of the box and of the dead: ask what they make good, most want to hear the same day.'
      : 'Tell the hatchery now if nobody has, with what photos there are: most want to hear on the day of the box.',
    usual < dead
      ? `${dead} dead are more than usual: ${lost}. ${isOfToday ? 'Look at the others every 2 to 3 hours today, and see that each drinks.' : 'See that each of the others drinks.'}`
      : `${dead} dead ${dead === 1 ? 'is' : 'are'} no more than usual: ${lost}.`,
  ];
}
