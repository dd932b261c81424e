import type { CattleGroup, Herd } from '../farm/herd.js';
import type { Paddock } from '../farm/paddock.js';
import { herdDays } from '../pasture/herd-demand.js';
import { weightOfGirth } from '../pasture/weight-of-girth.js';
import { fenceSizing } from '../plan/pasture/fence-sizing.js';
import { herdWater, type HerdWater } from '../plan/pasture/herd-water.js';
import { pastureContext, type PastureContext } from '../plan/pasture/pasture-context.js';
import { climateFromMonthlyMeans, type Climate } from '../weather/climate.js';
import { hotDaysC } from '../weather/hot-day.js';
import { EXAMPLE_FARM, NOTHING_ELSE } from './example-farm.js';
import type { Given, Topic } from './given.js';

/** A night lies this far below the day where a row gives only the high. */
const NIGHT_BELOW_K = 13;
const ALL_YEAR = 12;

const groupOf = ({ text, number, numberOr }: Given): CattleGroup => ({
  classId: text('class'),
  head: numberOr('head', 1),
  weightKg: number('weightKg'),
  gainKgPerDay: 0,
});

const spreadOf = ({ tables }: Given) => ({
  deviations: tables.judgements.grass.hotDayDeviations.value,
  highsSpreadK: tables.judgements.grass.highsSpreadK.value,
});

/** Water of one head on a day, as a herd's plan has it. */
function usualWaterL(given: Given): number {
  const { tables, number } = given;
  const maxC = [number('maxC')];
  return herdDays({ id: 'herd', name: 'Herd', groups: [groupOf(given)] }, tables, {
    ...{ first: '2027-07-01', days: 1, from: 0, minC: [number('minC')], maxC, hotC: maxC },
    energyMcalPerKg: [1.3],
  }).waterL[0]!;
}

/** The plan of a summer on some paddocks, without its moves. */
function planOf(
  { tables }: Given,
  climate: Climate,
  land: { readonly paddocks: number; readonly areaM2: number },
  herds: readonly Herd[] = [],
): PastureContext {
  const paddocks = Array.from({ length: land.paddocks }, (_, k): Paddock => ({
    id: String(k),
    name: `Paddock ${k + 1}`,
    areaM2: land.areaM2,
    forageId: tables.forages[0]!.id,
    stand: 'good',
    productivity: 'medium',
    soilId: 'loam',
    hasWater: true,
    hasShade: true,
    closedDays: [],
  }));
  return pastureContext({
    ...{ ...NOTHING_ELSE, tables, farm: EXAMPLE_FARM, climate, paddocks, herds },
    ...{ today: '2027-06-01', choices: { from: '2027-06-01', to: '2027-08-31' }, followers: [] },
  });
}

/** Water of a herd where the hottest day of one year in ten is as hot as the row says. */
function hotWater(given: Given): HerdWater {
  const { deviations, highsSpreadK } = spreadOf(given);
  const highC = given.number('hotC') - deviations * highsSpreadK;
  const climate = climateFromMonthlyMeans(flatYear(highC - NIGHT_BELOW_K), flatYear(highC), 0);
  const refillH = given.numberOr('refillH', undefined);
  const context = planOf(given, climate, { paddocks: 1, areaM2: 10_000 }, [
    { id: 'herd', name: 'Herd', groups: [groupOf(given)] },
  ]);
  const choices = { ...context.choices, ...(refillH === undefined ? {} : { refillH }) };
  return herdWater({ ...context, choices }, 0).part;
}

const flatYear = (c: number): number[] => Array<number>(ALL_YEAR).fill(c);

/** What cattle drink and what has to hold it, the fence around their land, and their weight by tape. */
export const waterAndFenceChecks: Topic = {
  title: 'Water, fence and girth of cattle',
  by: {
    'water-of-usual-day': usualWaterL,
    'water-on-hot-day': (given) => hotWater(given).water.value,
    'tank-on-hot-day': (given) => hotWater(given).tank.value,
    'energizer-by-sizes': (given) =>
      fenceSizing(
        planOf(given, climateFromMonthlyMeans(flatYear(5), flatYear(18), 0), {
          paddocks: given.number('paddocks'),
          areaM2: 10_000 * given.number('areaHa'),
        }),
      ).energizer.value,
    'hot-day-by-record': (given) =>
      hotDaysC(
        {
          way: 'csv',
          meanMaxC: [given.number('meanMaxC')],
          hotMaxC: [given.number('hotMaxC')],
        },
        spreadOf(given),
      )[0]!,
    'hot-day-by-means': (given) =>
      Math.max(
        ...hotDaysC(
          climateFromMonthlyMeans(flatYear(10), flatYear(given.number('meanMaxC')), 6),
          spreadOf(given),
        ),
      ),
    'weight-of-girth': ({ tables, number }) =>
      weightOfGirth(
        { girthCm: number('girthCm'), lengthCm: number('lengthCm') },
        tables.cattle.girth,
      ).value,
  },
};
