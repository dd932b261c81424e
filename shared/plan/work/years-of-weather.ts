import { dayOfYear } from '../../calendar/plain-date.js';
import { seededRandom } from '../../schedule/random.js';
import type { DailyWeather } from '../../weather/climate.js';
import { runsOfYears, type DayRun } from '../../weather/day-run.js';
import { drawnRun, type DayHabit } from '../../weather/drawn-year.js';
import { halfYearDays } from '../../weather/frost.js';
import { placeFrost } from '../place-frost.js';
import type { WorkFrame } from './days-of-work.js';
import type { WorkRequest } from './work-request.js';

/** A household's work, and the weather that its place has had. */
export interface HistoryRequest extends WorkRequest {
  /** Daily record of the place, in date order; may be empty. */
  readonly history: readonly DailyWeather[];
}

const dayHabit = ({ work }: WorkRequest['tables']): DayHabit => ({
  ...work.wetDay,
  dayToDay: work.dayToDay.value,
});

/**
 * Years of weather for the days of a plan: measured ones of the place where there are enough, else
 * drawn from what is usual there, with a fixed seed.
 */
export function yearsOf(
  request: HistoryRequest,
  frame: WorkFrame,
  drawnYears: number,
): { runs: DayRun[]; isMeasured: boolean } {
  const { history, climate, tables } = request;
  const measured = runsOfYears(history, frame.first, frame.dayOfYear.length);
  if (tables.judgements.work.fewestYears.value <= measured.length)
    return { runs: measured, isMeasured: true };
  const habit = dayHabit(tables);
  const random = seededRandom(request.seed);
  const spreadFactor = spreadByLastFrost(request);
  const runs = Array.from({ length: drawnYears }, () =>
    drawnRun(climate, frame.dayOfYear, habit, random, spreadFactor),
  );
  return { runs, isMeasured: false };
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
function spreadByLastFrost(request: HistoryRequest): number {
  const { climate, farm, tables, seed } = request;
  const { spring } = halfYearDays(farm.latitudeDeg);
  const frostC = tables.judgements.work.ownFrostC.value;
  const habit = dayHabit(tables);
  const last = placeFrost(request, tables).last?.usual ?? farm.lastFrost;
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
