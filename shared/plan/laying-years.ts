import { addDays, daysBetween } from '../calendar/plain-date.js';
import { arrivalAgeDaysOf, isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import type { LayCurve } from '../tables/lay-tables.js';
import type { Tables } from '../tables/tables.js';
import { firstEggAge, firstEggBounds } from './first-egg.js';
import type { Conditions } from './how-they-grow.js';

/** Days of lay that are planned after the first egg; hens that are there later are planned by whole years. */
export const LAY_YEAR_DAYS = 364;

/** What a plan of hens says of how long it goes on. */
interface LayPlan {
  /** Days in the plan. */
  readonly days: number;
  readonly layYears: number;
}

/** The laying year that a plan of hens goes to the end of, in words. */
export const lastLayYear = ({ layYears }: LayPlan): string =>
  layYears < 2 ? 'the first laying year' : `laying year ${layYears}`;

/** Day after arrival that follows the first laying year. */
export const endOfFirstYear = ({ days, layYears }: LayPlan): number =>
  days - Math.max(0, layYears - 1) * LAY_YEAR_DAYS;

/** The laying years up to the one that hens are in today, as far as the table goes; the first at least. */
export function layYearsOf(
  batch: Batch,
  firstEggAgeDays: number,
  { laying }: Tables,
  { today = batch.arrivalDate }: Conditions,
): number {
  const ageDays = arrivalAgeDaysOf(batch) + daysBetween(batch.arrivalDate, today);
  const begun = Math.ceil((ageDays - firstEggAgeDays) / LAY_YEAR_DAYS);
  return Math.min(laying.years.shares.length, Math.max(1, begun));
}

/** Age at the first egg: the table's, moved by what was counted while they are here. */
export function firstEggOf(
  batch: Batch,
  curve: LayCurve,
  tables: Tables,
  { eggCounts = [] }: Conditions,
): number {
  const { least, most } = firstEggBounds(curve, tables.judgements.birds);
  const arrivalAgeDays = arrivalAgeDaysOf(batch);
  return firstEggAge(usualFirstEggOf(batch, curve, tables), eggCounts, {
    hatchDate: addDays(batch.arrivalDate, -arrivalAgeDays),
    least: Math.max(least, arrivalAgeDays),
    most,
  });
}

/** Age at the first egg by the table; grown birds settle in their new home before they lay. */
export function usualFirstEggOf(batch: Batch, curve: LayCurve, { judgements }: Tables): number {
  const byTheTable = Math.round(curve.firstEggWeek * 7);
  return isStarted(batch)
    ? Math.max(byTheTable, arrivalAgeDaysOf(batch) + judgements.birds.settleDays.value)
    : byTheTable;
}
