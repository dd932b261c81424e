import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { arrivalAgeDaysOf } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import { birdGrowth, sexShares, LAST_AGE_DAYS } from '../poultry/growth.js';
import { rowById, type Tables } from '../tables/tables.js';

/** The day of hatch or of arrival is not always told right: judgement, no source. */
const DAYS_OFF = 7;

/**
 * Live weights of one bird that are believed of a batch on a day, kg: far to both sides of what the
 * growth table of its strain says for the age. Heavier sex above, lighter one below.
 */
export function weightBounds(
  batch: Batch,
  on: PlainDate,
  tables: Tables,
): { readonly min: number; readonly max: number } {
  const strain = rowById(tables.strains, batch.strainId);
  const table = rowById(tables.growthTables, batch.growthTableId ?? strain.growthTables[0]!);
  const age = daysBetween(batch.arrivalDate, on) + arrivalAgeDaysOf(batch);
  const shares = sexShares(batch.sex);
  const weights = (['male', 'female'] as const)
    .filter((sex) => 0 < shares[sex])
    .map((sex) => birdGrowth(table, sex).weightKg);
  const at = (day: number) => weights.map((kg) => kg[Math.min(Math.max(0, day), LAST_AGE_DAYS)]!);
  const times = tables.judgements.birds.weighedTimes.value;
  return {
    min: Math.min(...at(age - DAYS_OFF)) / times,
    max: Math.max(...at(age + DAYS_OFF)) * times,
  };
}
