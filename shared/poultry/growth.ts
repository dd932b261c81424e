import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import type { BirdSex, GrowthPoint, GrowthTable } from '../tables/bird-tables.js';
import type { Sex } from '../farm/batch.js';
import { fitGompertz, gompertzWeightKg } from './gompertz.js';

export const growthFormulas = {
  weight: {
    id: 'bird-weight',
    title: 'Live weight of one bird',
    words:
      'The published table is read between its printed ages by a curve that never overshoots. Each day’s gain is multiplied by the factor of how they are kept and, for meat birds outdoors, by what that day’s air leaves of it. Birds that were weighed run through the table faster or slower, so that they meet their weighings. Past the last printed age the Gompertz curve through the table carries on; the plan says so once.',
    symbols: 'W(t + 1) = W(t) + f·a_t·[W_table(s·(t + 1)) − W_table(s·t)]',
    sources: [],
    mark: 'computed',
  },
  dailyFeed: {
    id: 'bird-feed-day',
    title: 'Feed of one bird in a day',
    words:
      'Difference of the table’s cumulative feed between the two ages, times the feed factor and what that day’s air asks for, plus what is wasted. Birds that were weighed eat by the weight they have; slow ones live more days for it and eat to keep warm and moving on each.',
    symbols: 'F_day = {[F(s·(t + 1)) − F(s·t)]·b_t + max(0, 1 − s)·m·W^0.75}·f_feed·(1 + waste)',
    sources: [],
    mark: 'computed',
  },
  feedModel: {
    id: 'bird-feed-model',
    title: 'Feed of one bird where no table prints it',
    words: 'A share for every kilogram gained plus a daily share of metabolic weight.',
    symbols: 'ΔF = g·ΔW + m·W^0.75',
    sources: ['PS2020_FEED', 'KJPS48'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Kilograms of feed per kilogram of gain in the feed model, from the 2020 trial's periods. */
const GAIN_KG_PER_KG = 0.7;

/** Weight and feed of one bird of one sex, one value a day, index = age in days from hatch. */
export interface BirdGrowth {
  readonly weightKg: Float64Array;
  /** Feed eaten from hatch to the start of that day, without factors or waste. */
  readonly cumulativeFeedKg: Float64Array;
  /** Last age that the table prints a weight for. */
  readonly lastTableDay: number;
  readonly lastFeedDay: number;
  /** Daily feed that a bird lives on, per kilogram to the power of 0.75. */
  readonly maintenanceKgPerKg075Day: number;
}

/** Longest life that is worked out, days: a laying flock to the end of its first laying year. */
export const LAST_AGE_DAYS = 560;

const cache = new WeakMap<GrowthTable, Map<BirdSex, BirdGrowth>>();

/**
 * Daily growth of one bird of a table, by sex. Worked out once per table and kept with it.
 *
 * @returns weights and cumulative feed for ages 0 to `LAST_AGE_DAYS`
 */
export function birdGrowth(table: GrowthTable, sex: BirdSex): BirdGrowth {
  let bySex = cache.get(table);
  if (!bySex) cache.set(table, (bySex = new Map()));
  let growth = bySex.get(sex);
  if (!growth) bySex.set(sex, (growth = workOut(table, sex)));
  return growth;
}

/** Which sexes a batch holds, and in what shares. Straight run is taken as half and half. */
export function sexShares(sex: Sex): Readonly<Record<BirdSex, number>> {
  if (sex === 'cockerels') return { male: 1, female: 0 };
  if (sex === 'pullets') return { male: 0, female: 1 };
  return { male: 0.5, female: 0.5 };
}

function workOut(table: GrowthTable, sex: BirdSex): BirdGrowth {
  const points = table[sex];
  if (points) return fromPoints(points, table);
  if (sex === 'female' && table.male && table.sexRatio) return besideMales(table, table.sexRatio);
  if (sex === 'male' && table.maleGompertz) return fromMaleGompertz(table);
  if (table.asHatched) return fromAsHatched(table, sex);
  throw new Error(`Growth table "${table.id}" has no points for ${sex}.`);
}

function fromPoints(points: readonly GrowthPoint[], table: GrowthTable): BirdGrowth {
  const weightKg = dailyWeights(points);
  const lastTableDay = points.at(-1)!.ageDays;
  return { weightKg, lastTableDay, ...dailyFeed(points, weightKg, table) };
}

type SexRatio = NonNullable<GrowthTable['sexRatio']>;

const femaleToMale = ({ points }: SexRatio): ((day: number) => number) =>
  monotoneCubic(
    points.map((p) => p.ageDays),
    points.map((p) => p.femaleToMale),
  );

/** Pullets of a table that prints cockerels alone. */
function besideMales(table: GrowthTable, sexRatio: SexRatio): BirdGrowth {
  const males = birdGrowth(table, 'male');
  const ratio = femaleToMale(sexRatio);
  return {
    ...males,
    weightKg: males.weightKg.map((kg, day) => kg * ratio(day)),
    cumulativeFeedKg: neverFalling(males.cumulativeFeedKg.map((kg, day) => kg * ratio(day))),
  };
}

function neverFalling(values: Float64Array): Float64Array {
  for (let i = 1; i < values.length; i++) values[i] = Math.max(values[i]!, values[i - 1]!);
  return values;
}

/** Splits an as-hatched line into its two sexes, so that their mean is the printed line again. */
function fromAsHatched(table: GrowthTable, sex: BirdSex): BirdGrowth {
  const mean = fromPoints(table.asHatched!, table);
  if (!table.sexRatio) return mean;
  const ratio = femaleToMale(table.sexRatio);
  const weightKg = new Float64Array(LAST_AGE_DAYS + 1);
  const cumulativeFeedKg = new Float64Array(LAST_AGE_DAYS + 1);
  for (let day = 0; day <= LAST_AGE_DAYS; day++) {
    const r = ratio(day);
    const share = sex === 'male' ? 2 / (1 + r) : (2 * r) / (1 + r);
    weightKg[day] = mean.weightKg[day]! * share;
    cumulativeFeedKg[day] = mean.cumulativeFeedKg[day]! * share;
  }
  return { ...mean, weightKg, cumulativeFeedKg };
}

function fromMaleGompertz(table: GrowthTable): BirdGrowth {
  const curve = table.maleGompertz!;
  const weightKg = Float64Array.from({ length: LAST_AGE_DAYS + 1 }, (_, day) =>
    gompertzWeightKg(curve, day),
  );
  const females = birdGrowth(table, 'female');
  const cumulativeFeedKg = new Float64Array(LAST_AGE_DAYS + 1);
  // A cockerel is taken to need the pullet's feed for the same metabolic weight.
  for (let day = 1; day <= LAST_AGE_DAYS; day++) {
    const step = females.cumulativeFeedKg[day]! - females.cumulativeFeedKg[day - 1]!;
    const ratio = (weightKg[day - 1]! / females.weightKg[day - 1]!) ** 0.75;
    cumulativeFeedKg[day] = cumulativeFeedKg[day - 1]! + step * ratio;
  }
  return { ...females, weightKg, cumulativeFeedKg };
}

function dailyWeights(points: readonly GrowthPoint[]): Float64Array {
  const curve = monotoneCubic(
    points.map((p) => p.ageDays),
    points.map((p) => p.weightKg),
  );
  const last = points.at(-1)!;
  const beyond = fitGompertz(points.slice(1), points[0]!.weightKg);
  const beyondAtLast = gompertzWeightKg(beyond, last.ageDays);
  return Float64Array.from({ length: LAST_AGE_DAYS + 1 }, (_, day) =>
    day <= last.ageDays
      ? curve(day)
      : (last.weightKg * gompertzWeightKg(beyond, day)) / beyondAtLast,
  );
}

function dailyFeed(
  points: readonly GrowthPoint[],
  weightKg: Float64Array,
  table: GrowthTable,
): Pick<BirdGrowth, 'cumulativeFeedKg' | 'lastFeedDay' | 'maintenanceKgPerKg075Day'> {
  const printed = points.filter((p) => p.cumulativeFeedKg !== undefined);
  const cumulativeFeedKg = new Float64Array(LAST_AGE_DAYS + 1);
  const lastFeedDay = printed.length < 2 ? 0 : printed.at(-1)!.ageDays;
  if (0 < lastFeedDay) {
    const curve = monotoneCubic(
      printed.map((p) => p.ageDays),
      printed.map((p) => p.cumulativeFeedKg!),
    );
    for (let day = 0; day <= lastFeedDay; day++) cumulativeFeedKg[day] = curve(day);
  }
  const model = table.feedModel ?? {
    gainKgPerKg: GAIN_KG_PER_KG,
    maintenanceKgPerKg075Day: maintenanceOfLastInterval(printed, weightKg),
  };
  for (let day = lastFeedDay + 1; day <= LAST_AGE_DAYS; day++) {
    const gain = Math.max(0, weightKg[day]! - weightKg[day - 1]!);
    cumulativeFeedKg[day] =
      cumulativeFeedKg[day - 1]! +
      model.gainKgPerKg * gain +
      model.maintenanceKgPerKg075Day * weightKg[day - 1]! ** 0.75;
  }
  const { maintenanceKgPerKg075Day } = model;
  return { cumulativeFeedKg, lastFeedDay, maintenanceKgPerKg075Day };
}

/** The daily share of metabolic weight that makes the feed model meet the table's last interval. */
function maintenanceOfLastInterval(
  printed: readonly GrowthPoint[],
  weightKg: Float64Array,
): number {
  const [from, to] = [printed.at(-2)!, printed.at(-1)!];
  let metabolicKgDays = 0;
  for (let day = from.ageDays; day < to.ageDays; day++) metabolicKgDays += weightKg[day]! ** 0.75;
  const feed = to.cumulativeFeedKg! - from.cumulativeFeedKg!;
  const gain = weightKg[to.ageDays]! - weightKg[from.ageDays]!;
  return (feed - GAIN_KG_PER_KG * gain) / metabolicKgDays;
}
