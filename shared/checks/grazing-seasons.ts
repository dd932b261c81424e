import type { SeasonBooks } from '../pasture/season-books.js';
import { pastureContext } from '../plan/pasture/pasture-context.js';
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
function seasonOf(given: Given): SeasonBooks {
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
  return chooseMoves(context).books;
}

const MONTH_DAYS = 30.4;

/** Dates of a year on grass as they are written down of places. */
export const grazingSeasonChecks: Topic = {
  title: 'Seasons of grazing by place',
  by: {
    /** Days after 1 January; in the south after 1 July. */
    'turn-out': (given) => seasonOf(given).stays[0]!.from,
    'months-on-grass': (given) =>
      seasonOf(given).stays.reduce((sum, { days }) => sum + days, 0) / MONTH_DAYS,
  },
};
