import type { Sourced } from '../explain/formula.js';
import { arrivalAgeDaysOf, isStarted } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import { sexShares } from '../poultry/growth.js';
import { orderChances, type LossRates, type OrderOdds } from '../poultry/losses.js';
import type {
  BirdSex,
  FeedProgram,
  GrowthTable,
  LossTable,
  Strain,
} from '../tables/bird-tables.js';
import type { LayCurve } from '../tables/lay-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { eggsSetOf, type EggsSet } from './eggs-set.js';
import type { OwnFeed } from './feed-opened.js';
import { aliveOn, type FlockTold } from './flock-told.js';
import { growingOf, type Conditions, type OwnGrowth } from './how-they-grow.js';
import {
  chanceOf,
  oddsNow,
  sexShareOf,
  survivalOf,
  toldOf,
  type OddsNow,
} from './how-many-live.js';
import { firstEggOf, LAY_YEAR_DAYS, layYearsOf, usualFirstEggOf } from './laying-years.js';
import { leavingAgeDays } from './leaving-age.js';
import { endWeight, firstAgeOf, reachedBetween } from './weight-reached.js';

/**
 * What the birds of a batch do as they age. Without conditions it knows the weekday of the arrival and
 * no more of the calendar, so the arrival finder works it out once for all weeks. Index of every
 * array = days after
 * arrival.
 */
export interface Life {
  readonly strain: Strain;
  readonly growthTable: GrowthTable;
  readonly losses: LossTable;
  readonly rates: LossRates;
  readonly program: FeedProgram;
  readonly layCurve: LayCurve | undefined;
  readonly weightFactor: number;
  readonly feedFactor: number;
  /** What the household's weighings say of growth; undefined without any that count. */
  readonly own: OwnGrowth | undefined;
  /** What the bags opened say of the feed they use; undefined while too few were emptied. */
  readonly ownFeed?: OwnFeed;
  /** The same of hens from the first egg on. */
  readonly hensFeed?: OwnFeed;
  /** Whether the air outdoors changes growth or feed on any day. */
  readonly hasAir: boolean;
  /** Average weight at the end as the weighings leave it open; undefined without any. */
  readonly endWeightKg: { readonly low: number; readonly high: number } | undefined;
  readonly wasteShare: number;
  readonly arrivalAgeDays: number;
  /** Age at leaving for meat; age at the end of the last laying year planned for layers. */
  readonly lastAgeDays: number;
  /** Laying years that are planned: to the end of the one they are in; 0 for meat birds. */
  readonly layYears: number;
  readonly firstEggAgeDays: number | undefined;
  /** Days by which counted eggs moved it, later above 0; the whole curve of lay moves along. */
  readonly firstEggMovedDays: number;
  /** What of it is that grown birds settle before they lay. */
  readonly firstEggSettledDays: number;
  readonly cockerelsLeaveAgeDays: number | undefined;
  /** Age at which the target weight is reached, undefined when it never is. */
  readonly targetReachedAgeDays: number | undefined;
  /** Ages between which it is reached, as the weighings leave it open; undefined without any. */
  readonly targetReachedBetween: readonly [soonest: number, latest: number] | undefined;
  readonly lastTableAgeDays: number;
  /** Days in the plan, the arrival day and the last day included. */
  readonly days: number;
  readonly placed: number;
  readonly orderForWanted: number;
  /** What an order is reckoned by. */
  readonly odds: OrderOdds;
  /** Orders for each way of being sure, as the table lists them. */
  readonly orderSizes: readonly number[];
  /** Chance that the birds placed leave the number wanted. */
  readonly enough: number;
  /** Eggs of the household’s own that they hatch from. */
  readonly eggs: EggsSet | undefined;
  /** What was told of how many there are; undefined when nothing was. */
  readonly told: FlockTold | undefined;
  /** Birds there are by that, and what they are reckoned by. */
  readonly now: OddsNow | undefined;
  /** Whether a hen keeps them warm, so that no brooder is needed. */
  readonly isUnderHen: boolean;
  /** Whether they come grown, and go into their home on the day they come. */
  readonly isStarted: boolean;
  /** Whether they are kept warm in a brooder first. */
  readonly hasBrooder: boolean;
  readonly alive: Readonly<Record<BirdSex, Float64Array>>;
  readonly aliveAll: Float64Array;
  readonly weightKg: Readonly<Record<BirdSex, Float64Array>>;
  /** Weight of a chick on the day of hatch, mean of the sexes placed. */
  readonly hatchKg: number;
  /** Mean over the birds alive. */
  readonly meanWeightKg: Float64Array;
  /** Given to the flock that day, waste included; growing birds only (no lay). */
  readonly flockFeedKg: Float64Array;
  /** What of it the cockerels eat. */
  readonly cockerelFeedKg: Float64Array;
  /** Eaten but for the heat, nothing spilled, the last day as well: water goes with it. */
  readonly coolFeedKg: Float64Array;
  /** Rows that weights rest on: the growth table and the factor on it, where that is the strain's. */
  readonly weightRows: readonly Sourced[];
  /** Rows that feed rests on. */
  readonly feedRows: readonly Sourced[];
}

/**
 * Growth, feed and survival of one batch, by day after arrival.
 *
 * @throws Error when a strain names a table row that is not there; checked when tables are loaded
 */
export function lifeOf(batch: Batch, tables: Tables, conditions: Conditions = {}): Life {
  const strain = rowById(tables.strains, batch.strainId);
  const growthTable = rowById(tables.growthTables, batch.growthTableId ?? strain.growthTables[0]!);
  const isLaying = batch.purpose === 'layers';
  const losses = rowById(tables.losses, (isLaying && strain.layLosses) || strain.losses);
  const program = rowById(
    tables.feedPrograms,
    batch.feedProgramId ?? strain.feedProgram[batch.purpose]!,
  );
  const layCurve = isLaying
    ? rowById(tables.layCurves, batch.layCurveId ?? strain.layCurve!)
    : undefined;
  const byTheTable = layCurve && Math.round(layCurve.firstEggWeek * 7);
  const usualFirstEgg = layCurve && usualFirstEggOf(batch, layCurve, tables);
  const firstEggAgeDays = layCurve && firstEggOf(batch, layCurve, tables, conditions);

  const growing = growingOf(batch, { strain, table: growthTable, tables }, conditions);
  const shares = sexShares(batch.sex);
  const target = batch.targetLiveKg;
  const targetReachedAgeDays =
    isLaying || target === undefined ? undefined : firstAgeOf(growing, target);
  const layYears = isLaying ? layYearsOf(batch, firstEggAgeDays!, tables, conditions) : 0;
  const plannedAgeDays = isLaying
    ? firstEggAgeDays! + layYears * LAY_YEAR_DAYS
    : (conditions.keptToAgeDays ?? leavingAgeDays(batch, strain, targetReachedAgeDays));
  const cockerelsLeaveAgeDays =
    isLaying && batch.sex === 'straight-run' ? strain.leave.ageDays : undefined;

  const arrivalAgeDays = arrivalAgeDaysOf(batch);
  const told = toldOf(batch, conditions);
  // Meat birds leave when they are told to have left; what hens would have laid stays in sight.
  const overOn = isLaying ? undefined : told?.overOn;
  const lastAgeDays =
    overOn === undefined ? plannedAgeDays : Math.max(LEAST_AGE_DAYS, arrivalAgeDays + overOn);
  const days = lastAgeDays - arrivalAgeDays + 1;
  // Hens are wanted at the first egg, meat birds on the day they leave.
  const countedDay = (isLaying ? firstEggAgeDays! : lastAgeDays) - arrivalAgeDays;
  const rates: LossRates = {
    firstWeekShare: (batch.firstWeekLossPercent ?? losses.firstWeekPercent) / 100,
    laterShare: (batch.laterLossPercent ?? losses.laterPercent) / 100,
    laterToDay: batch.laterLossPercent === undefined ? losses.laterToDay : Math.max(8, countedDay),
    layYearShare: isLaying ? (losses.layYearPercent ?? 0) / 100 : 0,
  };
  const usual = survivalOf(batch, rates, { arrivalAgeDays, countedDay });
  const survivingAtEnd = usual(countedDay);
  const odds: OrderOdds = {
    wanted: batch.wantedBirds,
    survivingShare: survivingAtEnd,
    sexShare: sexShareOf(batch, tables, shares.female),
    togetherness: tables.orders.togetherness.value,
  };
  const { usual: usualSurety, shares: howSure } = tables.orders.surety;
  const chances = orderChances(odds);
  const orderForWanted = chances.toOrder(usualSurety);
  const orderSizes = howSure.map(chances.toOrder);
  const eggs = eggsSetOf(batch, strain, tables, odds);
  const isUnderHen = eggs !== undefined && eggs.incubator === undefined;
  const placed = batch.orderedBirds ?? eggs?.chicks ?? orderForWanted;

  const now = told && oddsNow(odds, told, { placed, usual, countedDay });

  const wasteShare = (batch.wastePercent ?? strain.waste.percent) / 100;
  const alive = { male: new Float64Array(days), female: new Float64Array(days) };
  const weightKg = { male: new Float64Array(days), female: new Float64Array(days) };
  const aliveAll = new Float64Array(days);
  const meanWeightKg = new Float64Array(days);
  const flockFeedKg = new Float64Array(days);
  const cockerelFeedKg = new Float64Array(days);
  const coolFeedKg = new Float64Array(days);
  const birds = {
    male: growing.birdTo('male', lastAgeDays),
    female: growing.birdTo('female', lastAgeDays),
  };
  for (let i = 0; i < days; i++) {
    const age = arrivalAgeDays + i;
    const living = aliveOn(told, placed, usual, i);
    let mass = 0;
    for (const sex of ['male', 'female'] as const) {
      const gone =
        sex === 'male' && cockerelsLeaveAgeDays !== undefined && cockerelsLeaveAgeDays <= age;
      alive[sex][i] = gone ? 0 : living * shares[sex];
      weightKg[sex][i] = birds[sex].weightKg[age]!;
      mass += alive[sex][i]! * weightKg[sex][i]!;
      const fed = i < days - 1 || isLaying ? 1 : 0; // feed is off on the day of leaving
      const kg = fed * alive[sex][i]! * birds[sex].feedKg[age]! * (1 + wasteShare);
      coolFeedKg[i]! += alive[sex][i]! * birds[sex].coolFeedKg[age]!;
      flockFeedKg[i]! += kg;
      if (sex === 'male') cockerelFeedKg[i] = kg;
    }
    aliveAll[i] = alive.male[i]! + alive.female[i]!;
    meanWeightKg[i] =
      0 < aliveAll[i]!
        ? mass / aliveAll[i]!
        : shares.male * weightKg.male[i]! + shares.female * weightKg.female[i]!;
  }

  return {
    strain,
    growthTable,
    losses,
    rates,
    program,
    layCurve,
    weightFactor: growing.weightFactor,
    feedFactor: growing.feedFactor,
    own: growing.own,
    hasAir: growing.hasAir,
    endWeightKg: endWeight(growing, lastAgeDays),
    wasteShare,
    arrivalAgeDays,
    lastAgeDays,
    layYears,
    firstEggAgeDays,
    firstEggMovedDays: (firstEggAgeDays ?? 0) - (byTheTable ?? 0),
    firstEggSettledDays: (usualFirstEgg ?? 0) - (byTheTable ?? 0),
    cockerelsLeaveAgeDays,
    targetReachedAgeDays,
    targetReachedBetween:
      targetReachedAgeDays === undefined ? undefined : reachedBetween(growing, target!),
    lastTableAgeDays: growing.lastTableAgeDays,
    days,
    placed,
    orderForWanted,
    odds,
    orderSizes,
    // Once the chicks are counted, eggs no longer matter.
    enough:
      eggs && batch.orderedBirds === undefined
        ? eggs.enough
        : now
          ? chanceOf(now)
          : chances.enough(placed),
    eggs,
    told,
    now,
    isUnderHen,
    isStarted: isStarted(batch),
    hasBrooder: !isUnderHen && !isStarted(batch),
    alive,
    aliveAll,
    weightKg,
    hatchKg: growing.hatchKg,
    meanWeightKg,
    flockFeedKg,
    cockerelFeedKg,
    coolFeedKg,
    weightRows: growing.weightRows,
    feedRows: growing.feedRows,
  };
}

/** A plan lasts two days at least, however soon the last bird was gone. */
const LEAST_AGE_DAYS = 4;
