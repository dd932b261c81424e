import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Farm } from '../farm/farm.js';
import type { Tables } from '../tables/tables.js';
import type { Climate, DailyWeather } from '../weather/climate.js';
import { byFrostDates, type YearOfLows } from '../weather/by-frost-dates.js';
import type { Nights } from '../weather/night-chances.js';
import { spreadOfLows } from '../weather/night-spread.js';

/**
 * Average lows and their spread by day of the year: of the daily record as it is, or of averages
 * that were typed, with frost ending and beginning on the farm's own dates.
 */
export function nightsOfPlace(
  climate: Climate,
  farm: Pick<Farm, 'latitudeDeg' | 'lastFrost' | 'firstFrost' | 'frostDatesAre'>,
  { nights }: Pick<Tables, 'nights'>,
): YearOfLows {
  const sdC = spreadOfLows(climate, farm.latitudeDeg, nights.spread);
  const lowC = Float64Array.from(climate.meanMinC);
  if (climate.way !== 'monthly-means') return { lowC, sdC };
  return byFrostDates(
    { lowC, sdC },
    { last: farm.lastFrost, first: farm.firstFrost, isSafe: farm.frostDatesAre === 'safe' },
    nights.likeness.value,
  );
}

/** Nights of a plan, day by day; those that are forecast by the forecast and its usual error. */
export function expectedNights(
  place: YearOfLows,
  dayOfYear: Int16Array,
  forecast: readonly DailyWeather[] = [],
  at?: { readonly today: PlainDate; readonly arrivalDate: PlainDate; readonly tables: Tables },
): Nights {
  const lowC = Float64Array.from(dayOfYear, (day) => place.lowC[day - 1]!);
  const sdC = Float64Array.from(dayOfYear, (day) => place.sdC[day - 1]!);
  if (at) {
    const { firstDayC, perDayC } = at.tables.nights.forecast;
    for (const { date, minC } of forecast) {
      const i = daysBetween(at.arrivalDate, date);
      if (i < 0 || dayOfYear.length <= i) continue;
      const ahead = Math.max(0, daysBetween(at.today, date));
      lowC[i] = minC;
      sdC[i] = Math.min(sdC[i]!, firstDayC + perDayC * ahead);
    }
  }
  return { lowC, sdC };
}
