import { dayOfYear, daysOfYear } from '../calendar/plain-date.js';
import { planBatch, type BatchPlan } from '../plan/batch-plan.js';
import { expectedNights, nightsOfPlace } from '../plan/expected-nights.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { chanceBelow, chanceOfColdNight } from '../weather/night-chances.js';
import { spreadOfLows } from '../weather/night-spread.js';
import { EXAMPLE_BATCH, exampleFarm } from './example-farm.js';
import type { Given, Topic } from './given.js';

/** Averages by month as they are typed, and usual frost dates where the source tells of them. */
interface Place {
  readonly latitudeDeg: number;
  readonly minC: readonly number[];
  readonly maxC: readonly number[];
  readonly lastFrost: string;
  readonly firstFrost: string;
}

const PLACES: Readonly<Record<string, Place>> = {
  // Colorado Climate Center, 1970 to 1999.
  'fort-collins': {
    latitudeDeg: 40.5,
    minC: [-9.2, -6.6, -2.9, 1.2, 6.4, 11.1, 14.1, 13.1, 8.1, 2.0, -4.1, -8.4],
    maxC: [5.5, 8.0, 11.8, 16.0, 21.1, 26.8, 29.6, 28.5, 24.0, 17.8, 10.2, 6.0],
    lastFrost: '05-03',
    firstFrost: '10-05',
  },
  // NOAA daily normals 1991 to 2020; only the lows are needed for their spread.
  'new-york': {
    latitudeDeg: 40.8,
    minC: [-2.3, -1.3, 2.1, 7.5, 12.8, 18.0, 21.2, 20.5, 16.8, 10.8, 5.6, 1.0],
    maxC: [4.2, 5.7, 10.0, 16.7, 22.0, 26.7, 29.4, 28.6, 24.8, 18.1, 12.2, 6.8],
    lastFrost: '04-01',
    firstFrost: '11-15',
  },
};

const placeOf = ({ text }: Given): Place => {
  const place = PLACES[text('place')];
  if (!place) throw new Error(`No place "${text('place')}".`);
  return place;
};

const climateOf = ({ minC, maxC }: Place) => climateFromMonthlyMeans(minC, maxC, 6);

/** A whole plan of a batch at that place, as its household would have it. */
function planAt(place: Place, given: Given): BatchPlan {
  const { latitudeDeg, lastFrost, firstFrost } = place;
  const picture = exampleFarm(given);
  const farm = { ...picture.farm, latitudeDeg, lastFrost, firstFrost };
  return planBatch({ ...picture, farm, climate: climateOf(place) }, given.tables, EXAMPLE_BATCH);
}

/** The nights of a run of days, as a plan expects them. */
const nightsOf = (given: Given) => {
  const place = placeOf(given);
  return expectedNights(
    nightsOfPlace(climateOf(place), place, given.tables),
    daysOfYear(`2027-${given.text('from')}`, given.number('nights')),
  );
};

/** How often single nights fall below what birds stand. */
export const nightChecks: Topic = {
  title: 'Nights as they come',
  by: {
    'share-of-nights-below': (given) => {
      const nights = nightsOf(given);
      const count = given.number('nights');
      const chances = Array.from({ length: count }, (_, k) =>
        chanceBelow(nights, k, given.number('limitC')),
      );
      return chances.reduce((sum, chance) => sum + chance, 0) / count;
    },
    'one-night-below': (given) =>
      chanceOfColdNight(
        nightsOf(given),
        { from: 0, to: given.number('nights') },
        () => given.number('limitC'),
        given.tables.nights.likeness.value,
      ),
    'day-out': (given) => {
      const { waysOut } = planAt(placeOf(given), given).outdoors;
      const { out } = waysOut.find(({ name }) => name === given.text('surety'))!;
      return dayOfYear(String(out!.on.value));
    },
    'first-week-too-cold': (given) => planAt(placeOf(given), given).outdoors.coldNight!.value,
    'one-in-so-many': ({ tables, number }) => {
      const count = number('nights');
      const nights = { lowC: new Float64Array(count), sdC: new Float64Array(count).fill(1) };
      const limit = number('deviations');
      return chanceOfColdNight(
        nights,
        { from: 0, to: count },
        () => limit,
        tables.nights.likeness.value,
      );
    },
    'spread-of-nights': (given) => {
      const place = placeOf(given);
      const spread = spreadOfLows(climateOf(place), place.latitudeDeg, given.tables.nights.spread);
      return spread[dayOfYear(`2027-${given.text('on')}`) - 1]!;
    },
  },
};
