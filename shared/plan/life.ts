import { addDays, daysBetween } from '../calendar/plain-date.js';
import type { Sourced } from '../explain/formula.js';
import { arrivalAgeDaysOf, isStarted, type Batch } from '../farm/batch.js';
import { sexShares } from '../poultry/growth.js';
import { orderChances, survivingShare, type LossRates, type OrderOdds } from '../poultry/losses.js';
import type {
  BirdSex,
  FeedPhase,
  FeedProgram,
  GrowthTable,
  LossTable,
  Strain,
} from '../tables/bird-tables.js';
import type { LayCurve } from '../tables/lay-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { aliveOn, flockTold, type FlockTold } from './flock-told.js';
import { eggsSetOf, type EggsSet } from './eggs-set.js';
import type { OwnFeed } from './feed-opened.js';
import { firstEggAge, firstEggBounds } from './first-egg.js';
import {
  growingOf,
  speedRange,
  type Conditions,
  type Growing,
  type OwnGrowth,
} from './how-they-grow.js';
import { leavingAgeDays } from './leaving-age.js';

/** Days of lay that are planned after the first egg; hens that are there later are planned by whole years. */
export const LAY_YEAR_DAYS = 364;

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
  readonly now: { readonly odds: OrderOdds; readonly there: number } | undefined;
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
    : leavingAgeDays(batch, strain, targetReachedAgeDays);
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

/** The laying year that a plan of hens goes to the end of, in words. */
export const lastLayYear = ({ layYears }: Life): string =>
  layYears < 2 ? 'the first laying year' : `laying year ${layYears}`;

/** Day after arrival that follows the first laying year. */
export const endOfFirstYear = ({ days, layYears }: Life): number =>
  days - Math.max(0, layYears - 1) * LAY_YEAR_DAYS;

/** The laying years up to the one that hens are in today, as far as the table goes; the first at least. */
function layYearsOf(
  batch: Batch,
  firstEggAgeDays: number,
  { laying }: Tables,
  { today = batch.arrivalDate }: Conditions,
): number {
  const ageDays = arrivalAgeDaysOf(batch) + daysBetween(batch.arrivalDate, today);
  const begun = Math.ceil((ageDays - firstEggAgeDays) / LAY_YEAR_DAYS);
  return Math.min(laying.years.shares.length, Math.max(1, begun));
}

/** Age at the first egg: the table's, moved by what was counted while they are here. */
function firstEggOf(
  batch: Batch,
  curve: LayCurve,
  tables: Tables,
  { eggCounts = [] }: Conditions,
): number {
  const { least, most } = firstEggBounds(curve, tables.judgements.birds);
  const arrivalAgeDays = arrivalAgeDaysOf(batch);
  return firstEggAge(usualFirstEggOf(batch, curve, tables), eggCounts, {
    hatchDate: addDays(batch.arrivalDate, -arrivalAgeDays),
    least: Math.max(least, arrivalAgeDays),
    most,
  });
}

/** Age at the first egg by the table; grown birds settle in their new home before they lay. */
function usualFirstEggOf(batch: Batch, curve: LayCurve, { judgements }: Tables): number {
  const byTheTable = Math.round(curve.firstEggWeek * 7);
  return isStarted(batch)
    ? Math.max(byTheTable, arrivalAgeDaysOf(batch) + judgements.birds.settleDays.value)
    : byTheTable;
}

/** Days of a chick's life over which the losses of its first week are spread. */
const FIRST_WEEK_DAYS = 7;

/**
 * Share of those placed that usually lives, by day after arrival. Of grown birds the losses of
 * chicks are the seller's: what is lost begins at their age, or with a loss that was typed for
 * their time here.
 */
function survivalOf(
  batch: Batch,
  rates: LossRates,
  { arrivalAgeDays, countedDay }: { readonly arrivalAgeDays: number; readonly countedDay: number },
): (day: number) => number {
  if (!isStarted(batch)) return (day) => survivingShare(rates, day);
  const isTyped = batch.laterLossPercent !== undefined;
  const from = isTyped ? FIRST_WEEK_DAYS : arrivalAgeDays;
  const here = isTyped
    ? { ...rates, laterToDay: FIRST_WEEK_DAYS + Math.max(1, countedDay) }
    : rates;
  const alreadyLost = survivingShare(here, from);
  return (day) => survivingShare(here, from + day) / alreadyLost;
}

/** Chance of a bird that comes to be of the sex that is wanted: of grown ones it can be seen. */
const sexShareOf = (batch: Batch, { orders }: Tables, femaleShare: number): number =>
  batch.purpose === 'meat' || isStarted(batch)
    ? 1
    : batch.sex === 'pullets'
      ? orders.sexing.share
      : femaleShare;

/** What was told of a batch that says how many came, or of which that was told. */
function toldOf(batch: Batch, { headChanges, today }: Conditions): FlockTold | undefined {
  if (!headChanges || headChanges.length === 0 || today === undefined) return undefined;
  const placed = batch.orderedBirds ?? batch.wantedBirds;
  return flockTold(batch, headChanges, { today, placed });
}

/**
 * What the birds there are may come to: those that went count toward the number wanted, those that
 * died are known, and only the days to come are left to chance.
 */
function oddsNow(
  odds: OrderOdds,
  told: FlockTold,
  {
    placed,
    usual,
    countedDay,
  }: { placed: number; usual: (day: number) => number; countedDay: number },
): { readonly odds: OrderOdds; readonly there: number } {
  const to = Math.min(told.knownTo, countedDay);
  const left = told.left[told.knownTo]!;
  const there = told.isCounted ? placed - told.died[told.knownTo]! - left : placed - left;
  return {
    there: Math.max(0, there),
    odds: {
      ...odds,
      wanted: Math.max(0, odds.wanted - left),
      survivingShare: usual(countedDay) / (told.isCounted ? usual(to) : 1),
    },
  };
}

const chanceOf = ({ odds, there }: ReturnType<typeof oddsNow>): number =>
  odds.wanted < 1 ? 1 : there < 1 ? 0 : orderChances(odds).enough(there);

/** How far the average at the end may lie off, by what the weighings leave open. */
function endWeight({ own, meanWeightsTo }: Growing, lastAgeDays: number): Life['endWeightKg'] {
  if (own?.speed === undefined) return undefined;
  const [slow, fast] = speedRange(own.speed);
  const at = (speed: number): number => meanWeightsTo(lastAgeDays, speed)[lastAgeDays]!;
  return { low: at(slow), high: at(fast) };
}

export interface DatedPhase {
  readonly phase: FeedPhase;
  readonly fromAgeDays: number;
  /** First age that no longer gets it. */
  readonly toAgeDays: number;
}

/** Feed phases of a batch with their ages, cut to the days it lives here. */
export function phasesOf(life: Life): DatedPhase[] {
  const end = life.lastAgeDays + (life.layCurve ? 1 : 0);
  const starts = life.program.phases.map((phase) =>
    phase.fromDay === 'first-egg' ? (life.firstEggAgeDays ?? Infinity) : phase.fromDay,
  );
  return life.program.phases.flatMap((phase, k) => {
    const fromAgeDays = Math.max(starts[k]!, life.arrivalAgeDays);
    const toAgeDays = Math.min(starts[k + 1] ?? Infinity, end);
    return fromAgeDays < toAgeDays ? [{ phase, fromAgeDays, toAgeDays }] : [];
  });
}

/** Oldest age at which a target weight is still looked for, days. */
const LATEST_TARGET_AGE_DAYS = 365;
/** A target is for birds that are worth processing. */
const FIRST_TARGET_AGE_DAYS = 7;

function firstAgeOf(growing: Growing, targetKg: number, speed?: number): number | undefined {
  const meanKg = growing.meanWeightsTo(LATEST_TARGET_AGE_DAYS, speed);
  const age = meanKg.findIndex((kg, day) => FIRST_TARGET_AGE_DAYS <= day && targetKg <= kg);
  return age < 0 ? undefined : age;
}

/** Ages between which a target is reached. It is not before a weighing that lay under it. */
function reachedBetween(growing: Growing, targetKg: number): Life['targetReachedBetween'] {
  const { own } = growing;
  if (own?.speed === undefined) return undefined;
  const [slow, fast] = speedRange(own.speed);
  const lighter = own.weighings.filter(({ isUsed, kg }) => isUsed && kg < targetKg);
  const notBefore = Math.max(0, ...lighter.map(({ ageDays }) => ageDays + 1));
  const soonest = Math.max(notBefore, firstAgeOf(growing, targetKg, fast) ?? 0);
  const latest = firstAgeOf(growing, targetKg, slow) ?? LATEST_TARGET_AGE_DAYS;
  return [soonest, Math.max(soonest, latest)];
}
