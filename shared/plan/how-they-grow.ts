import type { Sourced } from '../explain/formula.js';
import { arrivalAgeDaysOf } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import type { EggCount } from '../farm/egg-count.js';
import type { HeadChange } from '../farm/head-count.js';
import type { Weighing } from '../farm/weighing.js';
import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { birdGrowth, growthFormulas, sexShares, type BirdGrowth } from '../poultry/growth.js';
import { blendedCv, spreadOf, type Spread } from '../poultry/evenness.js';
import { airFactors, growthInAirFormulas, type AirFactors } from '../poultry/growth-in-air.js';
import {
  raisedBird,
  raisedWeights,
  type RaisedBird,
  type Raising,
} from '../poultry/raised-bird.js';
import {
  averageError,
  fittedSpeed,
  openAt,
  NINETEEN_IN_TWENTY,
  SPEEDS,
  type Speed,
  type WeighedAt,
} from '../poultry/weighings.js';
import type { BirdSex, GrowthTable, Strain } from '../tables/bird-tables.js';
import type { Tables } from '../tables/tables.js';

/** What is known of how a batch lives, beside its order. */
export interface Conditions {
  /** Average air of each day after arrival on which they are outdoors; NaN on other days. */
  readonly outdoorC?: Float64Array | undefined;
  readonly weighings?: readonly Weighing[];
  readonly eggCounts?: readonly EggCount[] | undefined;
  /** What changed how many there are, with the day up to which that is known. */
  readonly headChanges?: readonly HeadChange[] | undefined;
  readonly today?: PlainDate;
  /** Age to which meat birds are kept, whatever they weigh; by their weight or age when left out. */
  readonly keptToAgeDays?: number | undefined;
}

/** A weighing that growth is fitted to, or why it is not. */
export interface UsedWeighing extends WeighedAt {
  readonly weighing: Weighing;
  /** Planned for that age without any weighing, kg. */
  readonly plannedKg: number;
  readonly isUsed: boolean;
  /** How far the average of those weighed lies from that of all, one standard deviation as a share. */
  readonly averageOpen: number;
  /** How far its birds are taken to differ, one standard deviation as a share. */
  readonly cv: number;
  /** What single weights show; undefined where they were not told. */
  readonly spread: Spread | undefined;
}

/** What the household's own weighings say of growth. */
export interface OwnGrowth {
  readonly weighings: readonly UsedWeighing[];
  /** Undefined while none of them counts. */
  readonly speed: Speed | undefined;
  /** The weighings lie further from the table than birds do: a slip of the scale or the unit. */
  readonly isFarOff: boolean;
}

/** Birds of a batch as they grow: one bird of each sex, by age. */
export interface Growing {
  readonly table: GrowthTable;
  readonly weightFactor: number;
  readonly feedFactor: number;
  readonly own: OwnGrowth | undefined;
  /** Whether the air outdoors changes their growth or feed on any day. */
  readonly hasAir: boolean;
  readonly hatchKg: number;
  readonly lastTableAgeDays: number;
  /** Average live weight by age, kg, to the age asked for. */
  readonly meanWeightsTo: (lastAge: number, speed?: number) => Float64Array;
  readonly birdTo: (sex: BirdSex, lastAge: number) => RaisedBird;
  readonly weightRows: readonly Sourced[];
  readonly feedRows: readonly Sourced[];
}

/** Factors on weight and feed where the household gives none. A table of its own stands as printed. */
export function usualFactors(
  { keptAs, weightFactor }: { readonly [K in 'keptAs' | 'weightFactor']?: Batch[K] | undefined },
  { atHome }: Pick<GrowthTable, 'atHome'>,
): { readonly weight: number; readonly feed: number; readonly row: Sourced | undefined } {
  const row = keptAs === 'trial-house' ? undefined : atHome;
  const [weight, feed] = [row?.weightFactor ?? 1, row?.feedFactor ?? 1];
  // Heavier birds than usual eat in proportion: a typed weight makes no better conversion.
  return { weight, feed: feed * ((weightFactor ?? weight) / weight), row };
}

/** How the birds of a batch grow under conditions. */
export function growingOf(
  batch: Batch,
  parts: { readonly strain: Strain; readonly table: GrowthTable; readonly tables: Tables },
  { outdoorC, weighings = [] }: Conditions,
): Growing {
  const { strain, table, tables } = parts;
  const growth = { male: birdGrowth(table, 'male'), female: birdGrowth(table, 'female') };
  const usual = usualFactors(batch, table);
  const weightFactor = batch.weightFactor ?? usual.weight;
  const feedFactor = batch.feedFactor ?? usual.feed;
  const air = outdoorC && airByAge(batch, strain, tables, outdoorC);
  const shares = sexShares(batch.sex);
  const raised = (speed: number): Raising => ({
    weightFactor,
    feedFactor,
    speed,
    ...(air ? { airAt: (age) => air[age] } : {}),
  });
  const meanWeights = (lastAge: number, speed: number): Float64Array => {
    const raising = raised(speed);
    const sum = new Float64Array(lastAge + 1);
    for (const sex of ['male', 'female'] as const) {
      if (shares[sex] === 0) continue;
      const kg = raisedWeights(growth[sex], raising, lastAge);
      for (let age = 0; age <= lastAge; age++) sum[age]! += shares[sex] * kg[age]!;
    }
    return sum;
  };
  const own =
    weighings.length === 0 ? undefined : ownGrowth({ batch, tables, weighings }, meanWeights);
  const raising = raised(own?.speed?.value ?? 1);
  return {
    table,
    weightFactor,
    feedFactor,
    own,
    hasAir: air !== undefined,
    hatchKg: meanWeights(0, 1)[0]!,
    lastTableAgeDays: Math.floor(lastTableDay(growth) / raising.speed + 1e-9),
    meanWeightsTo: (lastAge, speed = raising.speed) => meanWeights(lastAge, speed),
    birdTo: (sex, lastAge) => raisedBird(growth[sex], raising, lastAge),
    ...rowsOf(batch, parts, { factor: usual.row, hasAir: air !== undefined }),
  };
}

const lastTableDay = ({ male, female }: Record<BirdSex, BirdGrowth>): number =>
  Math.max(male.lastTableDay, female.lastTableDay);

/** What the air leaves of gain and asks of feed by age; undefined when it changes nothing. */
function airByAge(
  batch: Batch,
  { heat }: Strain,
  { growing }: Tables,
  outdoorC: Float64Array,
): (AirFactors | undefined)[] | undefined {
  const byAge: (AirFactors | undefined)[] = [];
  outdoorC.forEach((airC, i) => {
    if (Number.isNaN(airC)) return;
    const age = arrivalAgeDaysOf(batch) + i;
    const factors = airFactors(growing, heat.share, age, airC);
    if (factors.gain !== 1 || factors.feed !== 1) byAge[age] = factors;
  });
  return byAge.length === 0 ? undefined : byAge;
}

function ownGrowth(
  {
    batch,
    tables: { growing, judgements },
    weighings,
  }: { batch: Batch; tables: Tables; weighings: readonly Weighing[] },
  meanWeights: (lastAge: number, speed: number) => Float64Array,
): OwnGrowth {
  const ageOf = ({ date }: Weighing): number =>
    daysBetween(batch.arrivalDate, date) + arrivalAgeDaysOf(batch);
  const lastAge = Math.min(OLDEST_WEIGHED_DAYS, Math.max(0, ...weighings.map(ageOf)));
  const planned = meanWeights(lastAge, 1);
  const flock = batch.orderedBirds ?? batch.wantedBirds;
  const { usualSpreadBirds, flocksApart, wanderDays } = judgements.birds;
  const all = weighings.map((weighing): UsedWeighing => {
    const ageDays = ageOf(weighing);
    const spread = weighing.eachKg && spreadOf(weighing.eachKg);
    const cv = blendedCv(growing.evenness.cv, usualSpreadBirds.value, {
      cv: spread?.cv,
      birds: weighing.birds,
    });
    const averageOpen = averageError({ ...growing.evenness, cv }, weighing.birds, flock);
    return {
      weighing,
      ageDays,
      kg: weighing.averageKg,
      error: openAt(averageOpen, wanderDays.value, ageDays),
      averageOpen,
      cv,
      spread,
      plannedKg: planned[ageDays] ?? Number.NaN,
      isUsed: growing.evenness.youngestDays <= ageDays && ageDays <= lastAge,
    };
  });
  const used = all.filter(({ isUsed }) => isUsed);
  if (used.length === 0) return { weighings: all, speed: undefined, isFarOff: false };
  const at = (speed: number): Float64Array => meanWeights(lastAge, speed);
  const [slowest, fastest] = [at(SPEEDS.least), at(SPEEDS.most)];
  const isFarOff = used.some(({ ageDays, kg, error }) => {
    const open = Math.exp(NINETEEN_IN_TWENTY * error);
    return kg * open < slowest[ageDays]! || fastest[ageDays]! * open < kg;
  });
  // What no bird does is not planned with; it is said.
  if (isFarOff) return { weighings: all, speed: undefined, isFarOff };
  const usual = { value: 1, error: flocksApart.value };
  return { weighings: all, speed: fittedSpeed(used, at, usual), isFarOff };
}

/** Older birds are grown: their weight says nothing of how fast they grew. */
const OLDEST_WEIGHED_DAYS = 365;

/** Speeds between which the true one lies, 19 times in 20. */
export const speedRange = ({ value, error }: Speed): readonly [number, number] => [
  Math.max(SPEEDS.least, value - NINETEEN_IN_TWENTY * error),
  Math.min(SPEEDS.most, value + NINETEEN_IN_TWENTY * error),
];

/** What weights and feed rest on; a factor that the household set is its own. */
function rowsOf(
  batch: Batch,
  {
    strain,
    table,
    tables,
  }: { readonly strain: Strain; readonly table: GrowthTable; readonly tables: Tables },
  { factor, hasAir }: { readonly factor: Sourced | undefined; readonly hasAir: boolean },
): Pick<Growing, 'weightRows' | 'feedRows'> {
  const { sexRatio, maleGompertz, feedModel = growthFormulas.feedModel } = table;
  const { best, heat, cold } = tables.growing;
  const printed = [
    table,
    ...(sexRatio ? [sexRatio] : []),
    ...(maleGompertz ? [maleGompertz] : []),
    ...(hasAir ? [growthInAirFormulas.air, best, heat, cold, strain.heat] : []),
  ];
  const factors = factor ? [factor] : [];
  return {
    weightRows: [...printed, ...(batch.weightFactor === undefined ? factors : [])],
    feedRows: [
      ...printed,
      feedModel,
      ...(batch.feedFactor === undefined ? factors : []),
      ...(batch.wastePercent === undefined ? [strain.waste] : []),
    ],
  };
}
