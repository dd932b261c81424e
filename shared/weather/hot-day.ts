import type { Formula } from '../explain/formula.js';
import type { Climate } from './climate.js';

export const hotDayFormulas = {
  hotDay: {
    id: 'hot-day-of-ten-years',
    title: 'Hottest day of one year in ten',
    words:
      'Mean high of that time of year and so many standard deviations of single highs as the hottest day of one year in ten lay above it in fifty years of a daily record. The deviation is that of the farm’s own record; where only monthly means are known it is taken as that of a middling station.',
    symbols: 'T = T_max + z·s',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** The 90th percentile of a normal spread lies so many standard deviations above its mean. */
const DEVIATIONS_TO_TENTH = 1.2816;

/**
 * High of the day which one year in ten brings at that time of year, °C, by day of the year (index 0
 * is 1 January).
 *
 * The highest of these is the hottest day of one year in ten: at Fort Collins from the years 1950 to
 * 1999 it comes out within 0.5 °C, by a spread that was taken from the fifty years before.
 *
 * @param spread how many standard deviations that day lies above the mean high, and the deviation
 *   where no daily record tells it, K
 */
export function hotDaysC(
  { way, meanMaxC, hotMaxC }: Pick<Climate, 'way' | 'meanMaxC' | 'hotMaxC'>,
  { deviations, highsSpreadK }: { readonly deviations: number; readonly highsSpreadK: number },
): Float64Array {
  return Float64Array.from(meanMaxC, (meanC, k) => {
    // Of typed means the hot day is only as far off as a cold night is, which says nothing of summer.
    const spreadK =
      way === 'monthly-means' ? highsSpreadK : (hotMaxC[k]! - meanC) / DEVIATIONS_TO_TENTH;
    return meanC + deviations * spreadK;
  });
}
