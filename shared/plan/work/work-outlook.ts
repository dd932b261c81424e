import type { Sourced } from '../../explain/formula.js';
import { round6, together } from '../../explain/quantity.js';
import { addDays, dayOfYear } from '../../calendar/plain-date.js';
import { latestStart } from '../../schedule/latest-start.js';
import { seededRandom, type Random } from '../../schedule/random.js';
import { WorkDays } from '../../schedule/work-days.js';
import { workNetwork } from '../../schedule/work-network.js';
import { inOrderOf } from '../../schedule/work-search.js';
import { workWindows } from '../../schedule/work-windows.js';
import { chancesOverYears, type YearSuits } from '../../schedule/work-years.js';
import { percentile, type DailyWeather } from '../../weather/climate.js';
import { runsOfYears, type DayRun } from '../../weather/day-run.js';
import { drawnRun, type DayHabit } from '../../weather/drawn-year.js';
import { halfYearDays } from '../../weather/frost.js';
import { placeFrost, type PlaceFrost } from '../place-frost.js';
import { workBasis } from './work-basis.js';
import { daysOfWork, workFrame, type DaysOfWork, type WorkFrame } from './days-of-work.js';
import type { DryEnough } from './work-ground.js';
import { sourcedOf, type WorkNeed } from './work-need.js';
import { suitsNeed } from './suits-of-needs.js';
import { fitAll } from './work-plan.js';
import type { WorkRequest } from './work-request.js';

/** How many of something in few, half and most years, by the share that is nearly always. */
export interface CountSpread {
  readonly tenth: number;
  readonly half: number;
  readonly ninetieth: number;
}

export interface JobOutlook {
  readonly key: string;
  readonly name: string;
  readonly belongsTo?: WorkNeed['belongsTo'];
  readonly latest: string;
  /** Share of years in which it is done by its latest day, and the error of that share. */
  readonly chance: number;
  readonly standardError: number;
  readonly lost: number;
  /** Day by which it is done in half of the years, and in nine of ten. */
  readonly usuallyBy?: string;
  readonly nearlyAlwaysBy?: string;
  /** Last day to begin it and still be done in time in nine years of ten, its hours kept free. */
  readonly startBySafe?: string;
  /** The same, were it a quarter longer. */
  readonly startByIfLonger?: string;
  /** Days between its first and its latest, and how many of them suit it. */
  readonly windowDays: number;
  readonly suitableDays?: CountSpread;
}

/** Days of a time of the month on which the ground can be worked. */
export interface WorkableSpan extends CountSpread {
  readonly from: string;
  readonly days: number;
}

/** Frost dates at one of the lows that have a name. */
export interface NamedFrost extends PlaceFrost {
  readonly thresholdC: number;
  readonly name: string;
}

/** The work played through many years of weather. */
export interface WorkOutlook {
  readonly years: number;
  /** Whether the years were measured here, or drawn from monthly means. */
  readonly isMeasured: boolean;
  readonly label: string;
  readonly hasRain: boolean;
  readonly jobs: readonly JobOutlook[];
  readonly workable: readonly WorkableSpan[];
  /** How dry the ground of a workable day has to be. */
  readonly dryEnough: DryEnough;
  readonly frost: readonly NamedFrost[];
  /** What the names of frosts rest on. */
  readonly frostFrom: Sourced;
  /** Share of years that is called nearly always, by which all spreads are told. */
  readonly sureShare: number;
  /** What chances rest on beside the years of weather. */
  readonly basis: Sourced;
}

const DRAWN_YEARS = 1000;
/** Plans tried for the order in which jobs are taken, the same in every year. */
const PLANS = 200;
const SPAN_DAYS = 14;
/** By so much work easily takes longer than it is planned with. */
const LONGER = 1.25;

export interface OutlookRequest extends WorkRequest {
  /** Daily record of the place, in date order; may be empty. */
  readonly history: readonly DailyWeather[];
}

/**
 * Chances of the work over many years of weather: measured years of the place where there
 * are ten or more, else years drawn from what is usual there.
 *
 * Source: Monte Carlo with a fixed seed; the error of a share p of n years is √(p(1 − p)/n).
 */
export function workOutlookOf(request: OutlookRequest, drawnYears = DRAWN_YEARS): WorkOutlook {
  const { work, chores } = fitAll(request, PLANS);
  const { problem, needs, fitted } = work;
  const frame = workFrame(request, problem.days);
  const random = seededRandom(request.seed);
  const drawing = { random, drawnYears, spreadFactor: spreadByLastFrost(request) };
  const { runs, isMeasured } = yearsOf(request, frame, drawing);
  const years = runs.map((run) => daysOfWork(frame, run));
  const suits = years.map((days) => suitsOfAll(request, needs, days));
  const network = workNetwork(problem.jobs);
  const windows = workWindows(problem.jobs, network);
  const list = inOrderOf(
    network,
    Float64Array.from(needs, (_, i) => fitted.plan[i]![0]?.day ?? windows[i]!.latestDay),
  );
  const jobs = problem.jobs.map((job, i) => ({ ...job, dueDay: windows[i]!.latestDay }));
  const sureShare = request.tables.judgements.work.sureShare.value;
  const chances = chancesOverYears({ ...problem, jobs }, list, suits, sureShare);
  const whole = new WorkDays(problem);
  const dateOf = (day: number): string => addDays(request.today, day);
  return {
    years: years.length,
    isMeasured,
    label: request.climate.label,
    hasRain: isMeasured ? hasRain(request.history) : request.climate.meanRainMm !== undefined,
    workable: workableSpans(years, request.today, sureShare),
    dryEnough: frame.dryEnough,
    frost: request.tables.work.frost.lows.map(({ name, atOrBelowC }) => ({
      name,
      thresholdC: atOrBelowC,
      ...placeFrost(request, request.tables, request.history, atOrBelowC),
    })),
    frostFrom: sourcedOf(request.tables.work.frost),
    sureShare,
    basis: together([
      workBasis(work.request, needs, chores).planned,
      ...(isMeasured ? [] : [request.tables.work.dayToDay]),
    ]),
    jobs: needs.map((need, i): JobOutlook => {
      const chance = chances[i]!;
      const { latestDay, earliestDay } = windows[i]!;
      const job = jobs[i]!;
      const atOnce = Int32Array.from({ length: problem.days }, (_, day) =>
        whole.together(job, day),
      );
      const startIf = (minutes: number): number =>
        suits
          .map((of) => latestStart({ ...job, minutes }, latestDay, atOnce, of[i]))
          .sort((a, b) => a - b)[Math.floor(suits.length * round6(1 - sureShare))]!;
      const startBy = startIf(job.minutes);
      const ifLonger = startIf(Math.round(LONGER * job.minutes));
      const from = Math.max(0, earliestDay);
      const asksForDays = suits[0]?.[i] !== undefined && from <= latestDay;
      return {
        key: need.key,
        name: need.name,
        ...(need.belongsTo ? { belongsTo: need.belongsTo } : {}),
        latest: dateOf(latestDay),
        chance: chance.onTime,
        standardError: chance.standardError,
        lost: chance.lost,
        ...(chance.halfDoneDay < 0 ? {} : { usuallyBy: dateOf(chance.halfDoneDay) }),
        ...(chance.mostDoneDay < 0 ? {} : { nearlyAlwaysBy: dateOf(chance.mostDoneDay) }),
        ...(startBy < 0 ? {} : { startBySafe: dateOf(startBy) }),
        ...(ifLonger < 0 ? {} : { startByIfLonger: dateOf(ifLonger) }),
        windowDays: Math.max(0, latestDay - from + 1),
        ...(asksForDays
          ? {
              suitableDays: spread(
                suits.map((of) => countBetween(of[i]!, from, latestDay)),
                sureShare,
              ),
            }
          : {}),
      };
    }),
  };
}

const dayHabit = ({ work }: WorkRequest['tables']): DayHabit => ({
  ...work.wetDay,
  dayToDay: work.dayToDay.value,
});

/** How years are drawn where there are too few measured ones. */
interface Drawing {
  readonly random: Random;
  readonly drawnYears: number;
  readonly spreadFactor: number;
}

function yearsOf(
  { history, climate, tables }: OutlookRequest,
  frame: WorkFrame,
  { random, drawnYears, spreadFactor }: Drawing,
): { runs: DayRun[]; isMeasured: boolean } {
  const measured = runsOfYears(history, frame.first, frame.dayOfYear.length);
  if (tables.judgements.work.fewestYears.value <= measured.length)
    return { runs: measured, isMeasured: true };
  const habit = dayHabit(tables);
  const runs = Array.from({ length: drawnYears }, () =>
    drawnRun(climate, frame.dayOfYear, habit, random, spreadFactor),
  );
  return { runs, isMeasured: false };
}

const hasRain = (history: readonly DailyWeather[]): boolean =>
  history.some(({ rainMm }) => rainMm !== null && rainMm !== undefined);

/** Days that suit every need in one year; needs that ask the same share one answer. */
function suitsOfAll(
  { tables }: WorkRequest,
  needs: readonly WorkNeed[],
  days: DaysOfWork,
): YearSuits {
  const known = new Map<string, Uint8Array | undefined>();
  return needs.map((need) => {
    const isOneDay = need.fromDay === need.untilDay ? need.fromDay : '';
    const key = `${JSON.stringify(need.conditions)}${isOneDay}`;
    if (!known.has(key)) known.set(key, suitsNeed(need, days, tables.work.wetDay.rainMm));
    return known.get(key);
  });
}

function workableSpans(
  years: readonly DaysOfWork[],
  today: string,
  sureShare: number,
): WorkableSpan[] {
  const days = years[0]!.isWorkable.length;
  const spans: WorkableSpan[] = [];
  for (let from = 0; from + SPAN_DAYS <= days; from += SPAN_DAYS) {
    const counts = years.map((y) => countBetween(y.isWorkable, from, from + SPAN_DAYS - 1));
    spans.push({ from: addDays(today, from), days: SPAN_DAYS, ...spread(counts, sureShare) });
  }
  return spans;
}

function countBetween(is: Uint8Array, from: number, to: number): number {
  let count = 0;
  for (let day = from; day <= Math.min(to, is.length - 1); day++) count += is[day]!;
  return count;
}

function spread(counts: readonly number[], sureShare: number): CountSpread {
  const sorted = [...counts].sort((a, b) => a - b);
  const at = (share: number): number => Math.round(percentile(sorted, share));
  return { tenth: at(round6(1 - sureShare)), half: at(0.5), ninetieth: at(sureShare) };
}

/** Springs drawn for each guess, and guesses made. */
const TRIAL_SPRINGS = 60;
const TRIALS = 7;

/**
 * How far days depart from their mean here, over what the climate says: so far that the last frost
 * of half of the drawn springs falls by the usual date of the farm.
 *
 * Range: 0.3 to 1.5, found by halving; later frosts come with wider departures.
 */
function spreadByLastFrost(request: OutlookRequest): number {
  const { climate, farm, tables, history, seed } = request;
  const { spring } = halfYearDays(farm.latitudeDeg);
  const frostC = tables.judgements.work.ownFrostC.value;
  const habit = dayHabit(tables);
  const last = placeFrost(request, tables, history).last?.usual ?? farm.lastFrost;
  const usual = spring.indexOf(dayOfYear(`2023-${last === '02-29' ? '02-28' : last}`));
  let [low, high] = [0.3, 1.5];
  for (let trial = 0; trial < TRIALS; trial++) {
    const factor = (low + high) / 2;
    const random = seededRandom(seed);
    let later = 0;
    for (let year = 0; year < TRIAL_SPRINGS; year++) {
      const { minC } = drawnRun(climate, spring, habit, random, factor);
      if (usual < minC.findLastIndex((c) => c <= frostC)) later++;
    }
    if (TRIAL_SPRINGS / 2 < later) high = factor;
    else low = factor;
  }
  return (low + high) / 2;
}
