import { daysBetween } from '../calendar/plain-date.js';
import type { Productivity } from '../farm/paddock.js';
import { pastureContext } from '../plan/pasture/pasture-context.js';
import type { Tables } from '../tables/tables.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { EXAMPLE_FARM } from './example-farm.js';
import type { Given, Topic } from './given.js';

/** A place whose growth somebody measured, by its averages of the months. */
export interface GrassPlace {
  readonly latitudeDeg: number;
  readonly minC: readonly number[];
  readonly maxC: readonly number[];
  readonly rainMm: readonly number[];
  readonly forageId: string;
  readonly productivity: Productivity;
}

/** Rain that lets no soil run dry, mm a month: a stand that is watered. */
export const WATERED_MM = 200;

/** Growth by day that a plan of that place goes by, from January to December, kg/ha. */
export function growthOfYearAt(place: GrassPlace, tables: Tables): Float64Array {
  const { growth, from } = growthOf(place, tables);
  const year = new Float64Array(DAYS);
  for (let i = 0; i < DAYS; i++) year[(i + from) % DAYS] = growth[i]!;
  return year;
}
const DAYS = 365;

function growthOf(place: GrassPlace, tables: Tables): { growth: Float64Array; from: number } {
  const { latitudeDeg, minC, maxC, rainMm, forageId, productivity } = place;
  const isSouth = latitudeDeg < 0;
  const context = pastureContext({
    farm: { ...EXAMPLE_FARM, latitudeDeg },
    climate: climateFromMonthlyMeans(minC, maxC, 6, rainMm),
    today: isSouth ? '2027-09-01' : '2027-03-01',
    paddocks: [
      {
        ...{ id: 'p', name: 'Meadow', areaM2: 10_000, forageId, productivity, stand: 'good' },
        ...{ soilId: 'loam', hasWater: true, hasShade: true, closedDays: [] },
      },
    ],
    ...{ herds: [], cows: [], readings: [], followers: [], tables },
    choices: isSouth ? { to: '2028-06-30' } : { to: '2027-12-31' },
  });
  const { first } = context.span;
  return {
    growth: context.grass.swards[0]!.growth,
    from: daysBetween(`${first.slice(0, 4)}-01-01`, first),
  };
}

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The same as averages of the months, kg/ha a day. */
export function growthByMonthAt(place: GrassPlace, tables: Tables): number[] {
  const year = growthOfYearAt(place, tables);
  let day = 0;
  return MONTH_DAYS.map((days) => {
    const sum = year.subarray(day, day + days).reduce((a, b) => a + b, 0);
    day += days;
    return sum / days;
  });
}

const numbersIn = (text: string): number[] => text.split(' ').map(Number);

export const placeOf = ({ number, text, textOr }: Given): GrassPlace => ({
  latitudeDeg: number('latitudeDeg'),
  minC: numbersIn(text('minC')),
  maxC: numbersIn(text('maxC')),
  rainMm: numbersIn(text('rainMm')),
  forageId: text('forage'),
  productivity: textOr('productivity', 'medium') as Productivity,
});

const sumOf = (year: Float64Array, from = 0, to = DAYS): number =>
  year.subarray(from, to).reduce((a, b) => a + b, 0);

const dayOf = (date: string): number => daysBetween('2027-01-01', `2027-${date}`);

/** What a plan lets grow at places that nobody fitted it to. */
export const grassGrowthChecks: Topic = {
  title: 'Growth of grass by place',
  by: {
    'growth-of-month': (given) =>
      growthByMonthAt(placeOf(given), given.tables)[given.number('month') - 1]!,
    'growth-of-year': (given) => sumOf(growthOfYearAt(placeOf(given), given.tables)),
    'share-of-growth': (given) => {
      const year = growthOfYearAt(placeOf(given), given.tables);
      return sumOf(year, dayOf(given.text('from')), dayOf(given.text('to'))) / sumOf(year);
    },
    'rainfed-over-watered': (given) => {
      const place = placeOf(given);
      const watered = { ...place, rainMm: place.rainMm.map(() => WATERED_MM) };
      return (
        sumOf(growthOfYearAt(place, given.tables)) / sumOf(growthOfYearAt(watered, given.tables))
      );
    },
  },
};
