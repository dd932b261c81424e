import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { DailyWeather } from './climate.js';

/** Weather of days one after another. */
export interface DayRun {
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly rainMm: Float64Array;
}

/** A run with so many days missing is not used, as state climate offices do with frost seasons. */
const MOST_MISSING = 9;

/**
 * The same days of the calendar in every year of a daily record, each as a run of its own.
 *
 * A run begins on the month and day of `first` and goes on day by day, so that a leap day shifts
 * what follows by one. A missing day takes the weather of the day before; years with ten or more
 * missing days are left out, as are those that begin with one.
 */
export function runsOfYears(
  history: readonly DailyWeather[],
  first: PlainDate,
  days: number,
): DayRun[] {
  if (history.length === 0) return [];
  const start = history[0]!.date;
  const last = history.at(-1)!.date;
  const byDay: (DailyWeather | undefined)[] = new Array(daysBetween(start, last) + 1);
  for (const day of history) byDay[daysBetween(start, day.date)] = day;
  const runs: DayRun[] = [];
  for (let year = Number(start.slice(0, 4)); ; year++) {
    const from = daysBetween(start, sameDayIn(first, year));
    if (byDay.length < from + days - MOST_MISSING) return runs;
    if (byDay[from] === undefined) continue;
    const run = runFrom(byDay, from, days);
    if (run) runs.push(run);
  }
}

/** 29 February falls on 1 March in years without one. */
const sameDayIn = (date: PlainDate, year: number): PlainDate =>
  date.endsWith('02-29') ? addDays(`${year}-02-28`, 1) : `${year}${date.slice(4)}`;

function runFrom(
  byDay: readonly (DailyWeather | undefined)[],
  from: number,
  days: number,
): DayRun | undefined {
  const run = {
    minC: new Float64Array(days),
    maxC: new Float64Array(days),
    rainMm: new Float64Array(days),
  };
  let missing = 0;
  for (let i = 0; i < days; i++) {
    const day = byDay[from + i];
    if (day === undefined && MOST_MISSING < ++missing) return undefined;
    run.minC[i] = day ? day.minC : run.minC[i - 1]!;
    run.maxC[i] = day ? day.maxC : run.maxC[i - 1]!;
    run.rainMm[i] = day?.rainMm ?? 0;
  }
  return run;
}
