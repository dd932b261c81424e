import { daysBetween } from '../calendar/plain-date.js';
import type { Productivity } from '../farm/paddock.js';
import { pastureContext } from '../plan/pasture/pasture-context.js';
import type { Tables } from '../tables/tables.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { EXAMPLE_FARM } from './example-farm.js';
import { metabolizableMcalPerKg, milkMcalPerKg } from '../pasture/forage-energy.js';
import { copyOf, digestibleShare, growOn, massOf } from '../pasture/sward.js';
import type { SeasonSward } from '../plan/pasture/season-swards.js';
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

function growthOf(
  place: GrassPlace,
  tables: Tables,
): { growth: Float64Array; swards: readonly SeasonSward[]; from: number } {
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
    swards: context.grass.swards,
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

const swardOf = (given: Given): SeasonSward => growthOf(placeOf(given), given.tables).swards[0]!;

/** Net energy for milk of grass that is grazed in time, mean of some days of the year, Mcal/kg. */
function milkEnergy(given: Given): number {
  const { digestibleShare: share } = swardOf(given);
  const days = share.subarray(dayOf(given.text('from')), dayOf(given.text('to')) + 1);
  return milkMcalPerKg(metabolizableMcalPerKg(days.reduce((a, b) => a + b, 0) / days.length));
}

/** Days over which digestibility is seen to fall. */
const FALLS_DAYS = 30;

/** Fall of digestibility in a day once a stand that is left alone has half of its stems. */
function fallAfterHeading(given: Given): number {
  const { sward } = swardOf(given);
  const { kind, weather, residualKgPerHa } = sward;
  const state = copyOf(sward.start);
  const headed = (kind.stemsFromSum + kind.stemsToSum) / 2;
  let day = 0;
  for (; weather.days[day]!.temperatureSum < headed; day++) growOn(sward, state, day);
  const before = digestibleShare(kind, state, residualKgPerHa);
  for (const to = day + FALLS_DAYS; day < to; day++) growOn(sward, state, day);
  return (before - digestibleShare(kind, state, residualKgPerHa)) / FALLS_DAYS;
}

const DAYS_A_MONTH = 365 / 12;

/**
 * What a stand that is left alone loses from the day it is heaviest through its dry season, share of
 * what stood then for each month.
 */
function lostInDrySeason(given: Given): number {
  const { sward } = swardOf(given);
  const state = copyOf(sward.start);
  const months = given.number('months');
  const mass: number[] = [];
  for (let day = 0; day < sward.weather.days.length; day++) {
    growOn(sward, state, day);
    mass.push(massOf(state));
  }
  const heaviest = mass.indexOf(Math.max(...mass));
  const after = mass[heaviest + Math.round(months * DAYS_A_MONTH)]!;
  return (1 - after / mass[heaviest]!) / months;
}

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
    'pasture-milk-energy': milkEnergy,
    'fall-after-heading': fallAfterHeading,
    'lost-in-dry-season': lostInDrySeason,
    /** Days after 1 January until means above freezing have summed to so much. */
    'sum-reached': (given) =>
      swardOf(given).sward.weather.days.findIndex(
        ({ temperatureSum }) => given.number('sum') <= temperatureSum,
      ),
    'rainfed-over-watered': (given) => {
      const place = placeOf(given);
      const watered = { ...place, rainMm: place.rainMm.map(() => WATERED_MM) };
      return (
        sumOf(growthOfYearAt(place, given.tables)) / sumOf(growthOfYearAt(watered, given.tables))
      );
    },
  },
};
