import type { Formula } from '../explain/formula.js';
import type { LayCurve, LayingTable, MoltTable } from '../tables/lay-tables.js';
import { henDayShare } from './lay.js';

export const layCycleFormulas = {
  byAge: {
    id: 'lay-at-age',
    title: 'Lay at that age',
    words:
      'Percent of the hens that lay on a day, read from a smooth curve through the points of the strain, times what flocks lay of them. After a molt it begins again at the peak, lower by as much as the eggs of that laying year ask.',
    symbols: 'y = y(t)·f_flock·r_year',
    sources: [],
    mark: 'computed',
  },
  molt: {
    id: 'molt-begins',
    title: 'Molt',
    words:
      'Hens that are old enough in fall molt some weeks after the days shorten fastest; where days hardly change, at an age. Hens of one flock molt over a month or two.',
    symbols: 'D = fastest fall + days',
    sources: [],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** A year of lay, as rates are compared. */
const YEAR_DAYS = 364;

/** Days of a flock, one after the other. */
export interface DaysOfHens {
  /** Age on the first of them. */
  readonly firstAgeDays: number;
  /** 1 to 366, of each day. */
  readonly dayOfYear: ArrayLike<number>;
}

/**
 * Days, counted from the first, on which molts begin.
 *
 * @param yearOfDayH length of each day of the year, h; index 0 is 1 January, 366 of them
 */
export function moltDays(
  molt: MoltTable,
  yearOfDayH: ArrayLike<number>,
  { firstAgeDays, dayOfYear }: DaysOfHens,
): number[] {
  const fallsFastest = dayOfFastestFall(yearOfDayH, molt.seasonH);
  const begins: number[] = [];
  let seasonless = Math.round(7 * molt.seasonlessAgeWeeks);
  for (let i = 0; i < dayOfYear.length; i++) {
    const ageDays = firstAgeDays + i;
    if (fallsFastest === undefined) {
      if (ageDays !== seasonless) continue;
      seasonless += YEAR_DAYS;
      begins.push(i);
    } else if (
      7 * molt.fromAgeWeeks <= ageDays &&
      dayOfYear[i] === 1 + ((fallsFastest - 1 + molt.afterEquinoxDays) % 365)
    ) {
      begins.push(i);
    }
  }
  return begins;
}

/** Day of the year, 1 to 365, on which the day shortens fastest; undefined where it hardly changes. */
function dayOfFastestFall(yearOfDayH: ArrayLike<number>, seasonH: number): number | undefined {
  let fastest = 0;
  let day = 1;
  let [shortest, longest] = [24, 0];
  for (let i = 0; i < 365; i++) {
    const hours = yearOfDayH[i]!;
    shortest = Math.min(shortest, hours);
    longest = Math.max(longest, hours);
    const fall = hours - yearOfDayH[(i + 1) % 365]!;
    if (fastest < fall) [fastest, day] = [fall, i + 1];
  }
  return longest - shortest < seasonH ? undefined : day;
}

/**
 * Share of the hens that lay on each day by age and molt alone, in good light and air.
 *
 * @param begins days on which molts begin, in order
 * @returns 0 to 1, one value a day
 */
export function layByAge(
  curve: LayCurve,
  { molt, years }: LayingTable,
  days: DaysOfHens,
  begins: readonly number[],
): Float64Array {
  const share = new Float64Array(days.dayOfYear.length);
  const peak = peakWeek(curve);
  const rates = begins.map((_, k) => rateOfYear(curve, molt, years.shares, k + 1, peak));
  let cycle = 0;
  for (let i = 0; i < share.length; i++) {
    if (begins[cycle] === i) cycle++;
    if (cycle === 0) {
      share[i] = henDayShare(curve, (days.firstAgeDays + i) / 7);
      continue;
    }
    const began = begins[cycle - 1]!;
    const weeks = (i - began) / 7;
    const full = rates[cycle - 1]! * henDayShare(curve, peak + weeks);
    share[i] = inMolt(molt, weeks, began === 0 ? full : share[began - 1]!, full);
  }
  return share;
}

/** Lay so many weeks after a molt began: down from what it was, little, up to what it will be. */
function inMolt(molt: MoltTable, weeks: number, before: number, after: number): number {
  if (molt.weeks <= weeks) return after;
  const low = molt.share * after;
  if (weeks < molt.edgeWeeks) return before + ((low - before) * weeks) / molt.edgeWeeks;
  const toEnd = molt.weeks - weeks;
  return toEnd < molt.edgeWeeks ? after + ((low - after) * toEnd) / molt.edgeWeeks : low;
}

/** Week of age at which most hens lay. */
function peakWeek({ points }: LayCurve): number {
  let best = points[0]!;
  for (const point of points) if (best.henDayPercent < point.henDayPercent) best = point;
  return best.ageWeeks;
}

/** Rate after a molt over the first cycle's that gives a year, the molt included, its share of eggs. */
function rateOfYear(
  curve: LayCurve,
  molt: MoltTable,
  shares: readonly number[],
  year: number,
  peak: number,
): number {
  let [first, later] = [0, 0];
  for (let i = 0; i < YEAR_DAYS; i++) {
    first += henDayShare(curve, curve.firstEggWeek + i / 7);
    const full = henDayShare(curve, peak + i / 7);
    later += inMolt(molt, i / 7, full, full);
  }
  return Math.min(1, (shares[Math.min(year, shares.length - 1)]! * first) / later);
}
