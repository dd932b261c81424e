import { daysBetween } from '../calendar/plain-date.js';
import type { SeasonBooks } from '../pasture/season-books.js';
import { pastureContext, type PastureContext } from '../plan/pasture/pasture-context.js';
import { chooseMoves } from '../plan/pasture/surplus.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { EXAMPLE_FARM } from './example-farm.js';
import type { Given, Topic } from './given.js';
import { placeOf } from './grass-growth.js';

/** Paddocks of the farm that is walked, each of so many hectares, and its cows with calves. */
const PADDOCKS = 12;
const AREA_M2 = 3000;
const HEAD = 6;

/** Walks a year of one farm at a place: cows with calves on twelve paddocks, hay where it is spared. */
function seasonOf(given: Given): { readonly context: PastureContext; readonly books: SeasonBooks } {
  const { latitudeDeg, minC, maxC, rainMm, forageId, productivity } = placeOf(given);
  const context = pastureContext({
    farm: { ...EXAMPLE_FARM, latitudeDeg },
    climate: climateFromMonthlyMeans(minC, maxC, 6, rainMm),
    today: latitudeDeg < 0 ? '2027-07-05' : '2027-03-01',
    paddocks: Array.from({ length: PADDOCKS }, (_, k) => ({
      ...{ id: `p${k}`, name: `Paddock ${k + 1}`, areaM2: AREA_M2, forageId, productivity },
      ...{ stand: 'good' as const, soilId: 'loam', hasWater: true, hasShade: true },
      closedDays: [],
    })),
    herds: [{ id: 'h', name: 'Cows', groups: [{ classId: 'cow-calf', head: HEAD }] }],
    ...{ cows: [], readings: [], followers: [], tables: given.tables, choices: {} },
  });
  return { context, books: chooseMoves(context).books };
}

const MONTH_DAYS = 30.4;
const M2_PER_ACRE = 4046.86;
/** What an animal unit eats in a month: 780 lb. */
const UNIT_MONTH_KG = 353.8;

const sumOf = (values: Float64Array, from: number, to: number): number =>
  values.subarray(from, to).reduce((a, b) => a + b, 0);

/** Growth of the days of the plan less what died off again, kg/ha. */
function yieldOf(given: Given): number {
  const { context, books } = seasonOf(given);
  const { from, to } = context.span;
  return (
    books.days.reduce(
      (sum, { grown, diedOff }) => sum + sumOf(grown, from, to) - sumOf(diedOff, from, to),
      0,
    ) / PADDOCKS
  );
}

/** Rest before the middle one of the stays that begin between two dates, days. */
function restBetween(given: Given): number {
  const { context, books } = seasonOf(given);
  const [from, to] = [given.text('from'), given.text('to')].map((date) =>
    daysBetween(context.span.first, `2027-${date}`),
  );
  const rests = books.stays
    .filter((stay) => from! <= stay.from && stay.from <= to!)
    .flatMap(({ restDays }) => (restDays === undefined ? [] : [restDays]))
    .sort((a, b) => a - b);
  return rests[Math.floor(rests.length / 2)]!;
}

/** Dates of a year on grass as they are written down of places. */
export const grazingSeasonChecks: Topic = {
  title: 'Seasons of grazing by place',
  by: {
    /** Days after 1 January; in the south after 1 July. */
    'turn-out': (given) => seasonOf(given).books.stays[0]!.from,
    'months-on-grass': (given) =>
      seasonOf(given).books.stays.reduce((sum, { days }) => sum + days, 0) / MONTH_DAYS,
    'yield-of-books': yieldOf,
    'rest-between': restBetween,
    'unit-months-of-acre': (given) => {
      const { context, books } = seasonOf(given);
      const { from, to } = context.span;
      const eatenKg = books.eatenKg.reduce((sum, kg) => sum + sumOf(kg, from, to), 0);
      return eatenKg / UNIT_MONTH_KG / ((PADDOCKS * AREA_M2) / M2_PER_ACRE);
    },
  },
};
