import { dayOfYear } from '../calendar/plain-date.js';
import { frostFreeDays } from '../weather/frost-free-days.js';
import { frostFromMeans } from '../weather/frost-from-means.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { snowCover } from '../weather/snow-cover.js';
import { usualSoilC } from '../weather/soil-temperature.js';
import { monthsIn } from './climate-given.js';
import type { Given, Topic } from './given.js';

/** The dates a farm begins with where its averages are known and its frosts are not. */
const datesOf = (given: Given) =>
  frostFromMeans(
    { minC: monthsIn(given, 'minC'), sdMinC: monthsIn(given, 'sdMinC') },
    { likeness: given.tables.nights.likeness.value, share: 0.5 },
  );

const dayOf = (monthDay: string): number => dayOfYear(`2023-${monthDay}`);

/** Water that comes of deep snow on a day, for each degree above freezing. */
function meltMmPerC({ tables }: Given): number {
  const day = { minC: [-20, 4], maxC: [-10, 6], rainMm: [500, 0] };
  return snowCover(day, tables.work.snow).toSoilMm[1]! / 5;
}

/** Frost dates and warmth of the soil, as work of the garden hangs on them. */
export const frostChecks: Topic = {
  title: 'Frost dates, warmth of the soil, snow',
  by: {
    'last-frost': (given) => dayOf(datesOf(given).lastFrost),
    'first-frost': (given) => dayOf(datesOf(given).firstFrost),
    'frost-free-days': (given) => {
      const { lastFrost, firstFrost } = datesOf(given);
      return frostFreeDays(lastFrost, firstFrost);
    },
    'soil-warmth': (given) =>
      usualSoilC(
        climateFromMonthlyMeans(monthsIn(given, 'minC'), monthsIn(given, 'maxC'), 6),
        given.number('latitudeDeg'),
      )[dayOf(given.text('on')) - 1]!,
    'snow-melt': (given) => meltMmPerC(given),
  },
};
