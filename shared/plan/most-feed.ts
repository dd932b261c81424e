import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { arrivalAgeDaysOf } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import { birdGrowth, LAST_AGE_DAYS, sexShares } from '../poultry/growth.js';
import { rowById, type Tables } from '../tables/tables.js';

/** More feed than one bird of a batch can have in front of it at once, kg: months of it, twice over. */
export function mostFeedKg(
  batch: Batch,
  on: PlainDate,
  { strains, growthTables, judgements }: Tables,
): number {
  const { feedAtOnceDays, feedAtOnceTimes, mostHenFeedKg } = judgements.alarms;
  const strain = rowById(strains, batch.strainId);
  const table = rowById(growthTables, batch.growthTableId ?? strain.growthTables[0]!);
  const old = daysBetween(batch.arrivalDate, on);
  const from = Math.max(0, old) + arrivalAgeDaysOf(batch);
  const days = feedAtOnceDays.value;
  const shares = sexShares(batch.sex);
  const eaten = (['male', 'female'] as const)
    .filter((sex) => 0 < shares[sex])
    .map((sex) => {
      const { cumulativeFeedKg } = birdGrowth(table, sex);
      const first = Math.min(from, LAST_AGE_DAYS - days);
      return cumulativeFeedKg[first + days]! - cumulativeFeedKg[first]!;
    });
  const ofHens = batch.purpose === 'layers' ? mostHenFeedKg.value * days : 0;
  return feedAtOnceTimes.value * Math.max(ofHens, ...eaten);
}
