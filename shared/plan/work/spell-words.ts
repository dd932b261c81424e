import { addDays, dayOfYear } from '../../calendar/plain-date.js';
import { chanceOfDryRun } from '../../weather/dry-run.js';
import { finishDay } from '../../schedule/work.js';
import { formatDate } from '../../units/dates.js';
import { isForeseen } from './dry-spells.js';
import { chainOf } from './spell-hours.js';
import type { WholeWork } from './whole-work.js';

const WEEK = 7;

/** Until when what is begun lies beyond its dry days, for want of hours; undefined where it does not. */
export function liesWords(work: WholeWork, index: number): string | undefined {
  const { request, needs, fitted } = work;
  const { dryDaysInRow } = needs[index]!.conditions;
  if (dryDaysInRow === undefined) return undefined;
  const { farm, today } = request;
  const over = fitted.plan[index]![0]!.day + dryDaysInRow;
  const last = inFieldUntil(work, index, dryDaysInRow);
  const until = formatDate(addDays(today, last), { units: farm.units, today });
  return last < over
    ? undefined
    : `it lies until ${until}, as there is no time for all of it in ${dryDaysInRow} days`;
}

/** Last day of what follows on other days and can lie in the spell: bales lie no more. */
function inFieldUntil({ problem, fitted }: WholeWork, index: number, runDays: number): number {
  const { jobs } = problem;
  const last = (job: number): number => finishDay(fitted.plan[job]!);
  const following = chainOf(jobs, index, runDays)
    .filter(({ days }) => 0 < days)
    .map(({ job }) => last(jobs.indexOf(job)));
  return Math.max(last(index), ...following);
}

/**
 * What the dry days rest on that a piece of work needs: the forecast, or the odds of such a week.
 * Undefined where it needs none in a row.
 */
export function spellWords(
  { request, needs, fitted, days }: WholeWork,
  index: number,
): string | undefined {
  const { dryDaysInRow: runDays } = needs[index]!.conditions;
  if (runDays === undefined) return undefined;
  const first = fitted.plan[index]![0]!.day;
  if (isForeseen(days, first, { runDays })) return `${runDays} dry days in a row are forecast`;
  const { meanRainMm } = request.climate;
  if (!meanRainMm) return 'no rain is known, so that every day counts as dry';
  const week = Array.from(
    { length: Math.max(WEEK, runDays) },
    (_, k) => meanRainMm[dayOfYear(addDays(request.today, first + k)) - 1]!,
  );
  const inTen = Math.round(10 * chanceOfDryRun(week, runDays, request.tables.work.wetDay));
  const odds = inTen === 0 ? 'fewer than 1' : String(inTen);
  return `beyond the forecast, where ${runDays} dry days in a row come in ${odds} of 10 such weeks: begin once they are forecast`;
}
