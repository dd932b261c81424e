import { addDays, dayOfYear } from '../../calendar/plain-date.js';
import { chanceOfDryRun } from '../../weather/dry-run.js';
import { isForeseen } from './dry-spells.js';
import type { WholeWork } from './whole-work.js';

const WEEK = 7;

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
