import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Farm } from '../farm/farm.js';
import type { NightTable } from '../tables/night-table.js';
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
  farm: FrostFarm,
  { nights: { spread, likeness } }: Pick<Tables, 'nights'>,
): YearOfLows {
  const key = JSON.stringify([
    farm.latitudeDeg,
    farm.lastFrost,
    farm.firstFrost,
    farm.frostDatesAre,
  ]);
  const known = KNOWN.get(climate);
  if (known?.key === key && known.spread === spread && known.likeness === likeness)
    return known.place;
  const place = placeOf(climate, farm, spread, likeness);
  KNOWN.set(climate, { key, spread, likeness, place });
  return place;
}

type FrostFarm = Pick<Farm, 'latitudeDeg' | 'lastFrost' | 'firstFrost' | 'frostDatesAre'>;

/**
 * All batches of a picture, whatever their kind, and every week that is looked at ask for the same
 * year: these rows are one and the same in the tables of each kind.
 */
const KNOWN = new WeakMap<Climate, NightRows & { key: string; place: YearOfLows }>();

type NightRows = Pick<NightTable, 'spread' | 'likeness'>;

function placeOf(
  climate: Climate,
  farm: FrostFarm,
  spread: NightRows['spread'],
  likeness: NightRows['likeness'],
): YearOfLows {
  const sdC = spreadOfLows(climate, farm.latitudeDeg, spread);
  const lowC = Float64Array.from(climate.meanMinC);
  if (climate.way !== 'monthly-means') return { lowC, sdC };
  return byFrostDates(
    { lowC, sdC },
    { last: farm.lastFrost, first: farm.firstFrost, isSafe: farm.frostDatesAre === 'safe' },
    likeness.value,
  );
}

/** Nights of a plan, day by day; those that are forecast by the forecast and its usual error. */
export function expectedNights(
  place: YearOfLows,
  dayOfYear: Int16Array,
  forecast: readonly DailyWeather[] = [],
  at?: { readonly today: PlainDate; readonly arrivalDate: PlainDate; readonly tables: Tables },
): Nights {
  const lowC = new Float64Array(dayOfYear.length);
  const sdC = new Float64Array(dayOfYear.length);
  for (let i = 0; i < dayOfYear.length; i++) {
    lowC[i] = place.lowC[dayOfYear[i]! - 1]!;
    sdC[i] = place.sdC[dayOfYear[i]! - 1]!;
  }
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
