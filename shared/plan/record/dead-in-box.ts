import { hatchesHere, isStarted, type Batch } from '../../farm/batch.js';
import type { ToldFact } from '../../farm/told-fact.js';
import type { BatchPlan } from '../batch-plan.js';

/**
 * What to do about young birds that were dead in the box, and whether so many are usual: the early
 * loss that a plan reckons with is of a whole first week. Nothing of what hatched here. That the
 * seller wants to hear the same day is common practice, no source.
 *
 * @param before the plan of the batch without the fact: its losses are those of its strain
 */
export function deadInBox(
  fact: ToldFact,
  batch: Pick<Batch, 'origin'>,
  { birds: { chicksPlaced, lostFirstWeek } }: Pick<BatchPlan, 'birds'>,
): string[] {
  if (fact.kind !== 'arrived' || hatchesHere(batch) || isStarted(batch)) return [];
  const { birds, dead = 0 } = fact.details;
  if (dead === 0) return [];
  const usual = Math.round((birds * lostFirstWeek.value) / Math.max(1, chicksPlaced.value));
  const lost = `of ${birds}, about ${usual} ${usual === 1 ? 'is' : 'are'} lost in the whole first week`;
  return [
    'Tell the hatchery today, with photos of the box and of the dead: ask what they make good, most want to hear the same day.',
    usual < dead
      ? `${dead} dead are more than usual: ${lost}. Look at the others every 2 to 3 hours today, and see that each drinks.`
      : `${dead} dead ${dead === 1 ? 'is' : 'are'} no more than usual: ${lost}.`,
  ];
}
