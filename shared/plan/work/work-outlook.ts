import type { Sourced } from '../../explain/formula.js';
import { together } from '../../explain/quantity.js';
import { addDays } from '../../calendar/plain-date.js';
import type { DailyWeather } from '../../weather/climate.js';
import { placeFrost, type PlaceFrost } from '../place-frost.js';
import { betterOdds, type Candidate } from './better-odds.js';
import { daysOfWork, workFrame, type DaysOfWork } from './days-of-work.js';
import { fewerBirds, type WithFewerBirds } from './fewer-birds.js';
import { countBetween, jobOutlooks, spread, type CountSpread } from './job-outlook.js';
import type { JobOutlook } from './job-outlook.js';
import { oddsCandidates } from './odds-candidates.js';
import { playedWork } from './played-work.js';
import { unlikelyWork } from './why-unlikely.js';
import { workBasis } from './work-basis.js';
import type { DryEnough } from './work-ground.js';
import { sourcedOf } from './work-need.js';
import { fitAll } from './fitted-work.js';
import { yearsOf, type HistoryRequest } from './years-of-weather.js';

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

/** The work played through many years of weather by people who look at the sky. */
export interface WorkOutlook {
  readonly years: number;
  /** Whether the years were measured here, or drawn from monthly means. */
  readonly isMeasured: boolean;
  readonly label: string;
  readonly hasRain: boolean;
  /** Share of days that come as forecast, by days ahead. */
  readonly rightShares: readonly number[];
  readonly jobs: readonly JobOutlook[];
  readonly workable: readonly WorkableSpan[];
  /** How dry the ground of a workable day has to be. */
  readonly dryEnough: DryEnough;
  readonly frost: readonly NamedFrost[];
  /** What the names of frosts rest on. */
  readonly frostFrom: Sourced;
  /** Share of years that is called nearly always, by which all spreads are told. */
  readonly sureShare: number;
  /** Share of years from which work is called likely to get done. */
  readonly likelyShare: number;
  /** Hours of the helper whose Saturday is told. */
  readonly helperHours: number;
  /** What chances rest on beside the years of weather. */
  readonly basis: Sourced;
}

const DRAWN_YEARS = 300;
/** Plans tried for the order in which jobs are taken. */
const PLANS = 200;
const SPAN_DAYS = 14;

export interface OutlookRequest extends HistoryRequest {
  /** The same work with some birds of a batch fewer; left out where that cannot be. */
  readonly withFewerBirds?: WithFewerBirds;
  /** Told the share of the work that is played, 0 to 1. */
  readonly onPlayed?: (share: number) => void;
}

/** How far the work is when each of its parts begins. */
const PART = { weather: 0.05, base: 0.35, why: 0.4, better: 0.5 };

/**
 * Chances of the work over many years of weather: measured years of the place where there are
 * enough, else years drawn from what is usual there. In each year the days of the work are chosen
 * anew every week, by the forecast of that week; forecasts fail as often as they usually do.
 *
 * Source: Monte Carlo with a fixed seed; the error of a share p of n years is √(p(1 − p)/n).
 */
export function workOutlookOf(request: OutlookRequest, drawnYears = DRAWN_YEARS): WorkOutlook {
  const { onPlayed } = request;
  const { work, chores } = fitAll(request, PLANS);
  onPlayed?.(PART.weather);
  const frame = workFrame(request, work.problem.days);
  const { runs, isMeasured } = yearsOf(request, frame, drawnYears);
  const lies = frame.snowBeforeMm;
  const years = runs.map((run, year) => daysOfWork(frame, run, lies[year % lies.length]!));
  onPlayed?.(PART.base);
  const played = playedWork(work, years);
  const base = played.play();
  const within = (from: number, to: number) => (share: number) =>
    onPlayed?.(from + share * (to - from));
  const unlikely = unlikelyWork(work, played, base, within(PART.why, PART.better));
  // What only waits for other late work is helped with that.
  const low = unlikely.filter(({ lacks }) => lacks !== 'before').map(({ index }) => index);
  const candidates: Candidate[] = [
    ...oddsCandidates(work, played, low),
    ...fewerBirds(request, work, low),
  ];
  const better = betterOdds(played, { base, candidates, onPlayed: within(PART.better, 1) });
  const { sureShare, likelyShare, helperHours } = request.tables.judgements.work;
  const { dayToDay, forecast, frost } = request.tables.work;
  return {
    years: years.length,
    isMeasured,
    label: request.climate.label,
    hasRain: isMeasured ? hasRain(request.history) : request.climate.meanRainMm !== undefined,
    rightShares: forecast.rightShares,
    workable: workableSpans(years, request.today, sureShare.value),
    dryEnough: frame.dryEnough,
    frost: frost.lows.map(({ name, atOrBelowC }) => ({
      name,
      thresholdC: atOrBelowC,
      ...placeFrost(request, request.tables, atOrBelowC),
    })),
    frostFrom: sourcedOf(frost),
    sureShare: sureShare.value,
    likelyShare: likelyShare.value,
    helperHours: helperHours.value,
    basis: together([
      workBasis(work.request, work.needs, chores).planned,
      forecast,
      ...(isMeasured ? [] : [dayToDay]),
    ]),
    jobs: jobOutlooks(work, played, { base, unlikely, better }),
  };
}

const hasRain = (history: readonly DailyWeather[]): boolean =>
  history.some(({ rainMm }) => rainMm !== null && rainMm !== undefined);

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
