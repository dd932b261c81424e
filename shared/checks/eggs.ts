import { monthOf } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import { batchRequest } from '../plan/batch-request.js';
import type { PlanContext } from '../plan/context.js';
import { planContext } from '../plan/plan-context.js';
import { feedOfHens } from '../plan/feed-of-hens.js';
import { LAY_YEAR_DAYS } from '../plan/laying-years.js';
import type { LayDays } from '../plan/lay-days.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { NOTHING_ELSE } from './example-farm.js';
import type { Given, Topic } from './given.js';

const FLOCK = 'flock';
/** Air outside at which hens lay as their age and light have it. */
const MILD_C = 17;
const SWING_K = 5;

/** A flock of hens as a row gives it: in the same weather all year, so that light alone differs. */
function flockOf(given: Given, airC = MILD_C): PlanContext & Laying {
  const { text, numberOr, textOr } = given;
  const lowC = Array<number>(12).fill(airC - SWING_K);
  const highC = Array<number>(12).fill(airC + SWING_K);
  const lightH = numberOr('lampH', undefined);
  const layCurveId = textOr('curve', undefined);
  const picture: FarmPicture = {
    ...NOTHING_ELSE,
    today: '2026-11-25',
    farm: {
      name: 'Example',
      latitudeDeg: numberOr('latitude', 40),
      longitudeDeg: 0,
      elevationM: 0,
      timeZone: 'UTC',
      units: 'metric',
      currency: 'USD',
      electricityPricePerKWh: '0.20',
      gasPricePerL: '0.80',
      monthlyMinC: lowC,
      monthlyMaxC: highC,
      lastFrost: '05-20',
      firstFrost: '09-28',
      noDeliveryDates: [],
    },
    climate: climateFromMonthlyMeans(lowC, highC, SWING_K),
    facilities: [
      {
        kind: 'coop',
        id: 'coop',
        name: 'Coop',
        floorM2: 10,
        roostM: 5,
        nestBoxes: 5,
        runM2: 0,
        ...(lightH === undefined ? {} : { lightH }),
      },
    ],
    batches: [
      {
        id: FLOCK,
        name: 'Example',
        purpose: 'layers',
        strainId: text('strain'),
        sex: 'pullets',
        wantedBirds: 100,
        arrivalDate: textOr('arrives', '2027-04-15'),
        hatchToArrivalDays: 0,
        coopId: 'coop',
        ...(layCurveId === undefined ? {} : { layCurveId }),
      },
    ],
  };
  const context = planContext(batchRequest(picture, given.tables, FLOCK));
  return { ...context, lay: context.lay! };
}

interface Laying {
  readonly lay: LayDays;
}

/** Eggs of a hen that lives, over days from one to another. */
function eggsOf(share: Float64Array, from: number, to: number): number {
  let eggs = 0;
  for (let i = from; i < to; i++) eggs += share[i]!;
  return eggs;
}

const yearOf = ({ lay }: Laying, year: number): number => {
  const from = lay.firstDay + (year - 1) * LAY_YEAR_DAYS;
  return eggsOf(lay.planned, from, from + LAY_YEAR_DAYS);
};

/** Average of the days of a month of a laying year, 1 to 12. */
function monthMean(
  { lay, dateOf }: PlanContext & Laying,
  share: Float64Array,
  { month, year }: { month: number; year: number },
): number {
  const from = lay.firstDay + (year - 1) * LAY_YEAR_DAYS;
  let [sum, days] = [0, 0];
  for (let i = from; i < from + LAY_YEAR_DAYS; i++) {
    if (monthOf(dateOf(i)) !== month) continue;
    sum += share[i]!;
    days++;
  }
  return sum / days;
}

/** The month of a laying year with the most or fewest eggs. */
function monthBy(given: Given, better: (a: number, b: number) => boolean): number {
  const flock = flockOf(given);
  const year = given.number('year');
  const mean = (month: number) => monthMean(flock, flock.lay.planned, { month, year });
  let best = 1;
  for (let month = 2; month <= 12; month++) if (better(mean(month), mean(best))) best = month;
  return best;
}

const peakOf = ({ lay }: Laying, year: number): number => {
  const from = lay.firstDay + (year - 1) * LAY_YEAR_DAYS;
  return Math.max(...lay.planned.subarray(from, from + LAY_YEAR_DAYS));
};

/** Feed of a hen on an average day of her first laying year, kg. */
function feedOfYear(flock: PlanContext & Laying): number {
  const { firstDay, hens } = flock.lay;
  const { kg } = feedOfHens(flock, firstDay, firstDay + LAY_YEAR_DAYS);
  let sum = 0;
  kg.forEach((each, k) => (sum += each / hens[firstDay + k]!));
  return sum / LAY_YEAR_DAYS;
}

/** Eggs over the year and the years, as a plan of layers has them. */
export const eggChecks: Topic = {
  title: 'Eggs over the year and the years',
  by: {
    'eggs-of-year': (given) => yearOf(flockOf(given), given.number('year')),
    'year-over-first': (given) => {
      const flock = flockOf(given);
      return yearOf(flock, given.number('year')) / yearOf(flock, 1);
    },
    'two-years-over-one': (given) => {
      const flock = flockOf(given);
      return 1 + yearOf(flock, 2) / yearOf(flock, 1);
    },
    'month-over-month': (given) => {
      const flock = flockOf(given);
      const year = given.number('year');
      const share =
        given.textOr('light', 'sun') === 'lamp' ? flock.lay.share.lit : flock.lay.share.unlit;
      return (
        monthMean(flock, share, { month: given.number('month'), year }) /
        monthMean(flock, flock.lay.share.unlit, { month: given.number('overMonth'), year })
      );
    },
    'lamp-gain': (given) => {
      const flock = flockOf(given);
      const sum = (share: Float64Array) =>
        [10, 11, 12, 1, 2, 3].reduce(
          (total, month) => total + monthMean(flock, share, { month, year: 1 }),
          0,
        );
      return sum(flock.lay.share.lit) / sum(flock.lay.share.unlit) - 1;
    },
    'poorest-month': (given) => monthBy(given, (a, b) => a < b),
    'best-month': (given) => monthBy(given, (a, b) => b < a),
    'peak-below-first': (given) => {
      const flock = flockOf(given);
      return peakOf(flock, 1) - peakOf(flock, 2);
    },
    'days-to-half-lay': (given) => {
      const { lay } = flockOf(given);
      const [began] = lay.molts;
      let day = began! + 1;
      while (day < lay.planned.length && !(0.5 <= lay.planned[day]! && lay.planned[day - 1]! < 0.5))
        day++;
      return day - began!;
    },
    'lay-in-warm-air': (given) => {
      const inCoop = (airC: number) =>
        yearOf(flockOf(given, airC - given.tables.heat.building.warmerThanOutsideK), 1);
      return inCoop(given.number('warmC')) / inCoop(given.number('coolC'));
    },
    'feed-in-cold-air': (given) =>
      feedOfYear(flockOf(given, given.number('coldC'))) /
        feedOfYear(flockOf(given, given.number('mildC'))) -
      1,
  },
};
