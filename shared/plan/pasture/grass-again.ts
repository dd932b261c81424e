import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { GrazingProblem } from '../../pasture/grazing-problem.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { massOf } from '../../pasture/sward.js';
import type { PastureContext } from './pasture-context.js';
import { YEAR } from './pasture-span.js';
import type { Chosen } from './surplus.js';

/**
 * First day of a herd on the grass of the year after the plan, taken to come as in this one; undefined of
 * a herd that stays on hay through the spring of the plan, or where the grass never comes to a first pass.
 */
export function grassAgainOf(
  { span, dateOf }: PastureContext,
  { problem, books }: Chosen,
  h: number,
): PlainDate | undefined {
  const own = books.stays.filter(({ herd }) => herd === h);
  const out = turnOutOf(problem, { ...books, stays: own });
  const staysIn = own.length === 0 && out !== undefined && span.from <= out;
  return out === undefined || staysIn ? undefined : addDays(dateOf(out), YEAR);
}

/**
 * Day on which herds go out in spring: of a plan that begins later, as it was told, else when what winter
 * leaves and what usually grows come to the first pass. Cattle that go out on the first day of a plan may
 * have been late already.
 */
export function turnOutOf(problem: GrazingProblem, books: SeasonBooks): number | undefined {
  const [first] = books.stays;
  if (first?.start === 'turn-out' && problem.from < first.from) return first.from;
  const usual = outOfItself(problem);
  if (first?.start === 'turn-out') return Math.min(first.from, usual ?? first.from);
  return usual ?? first?.from;
}

/** The same without a plan of what is ahead. */
export function outOfItself({
  swards,
  usualGrowth,
  past,
  growsKgPerHa,
  to,
}: GrazingProblem): number | undefined {
  let growsFrom = Infinity;
  let tallFrom = Infinity;
  swards.forEach(({ start, firstPassKgPerHa }, p) => {
    let kgPerHa = massOf(start);
    for (let day = 0; day < to && day < tallFrom; day++) {
      const grown = usualGrowth[p]![day]!;
      if (growsKgPerHa <= grown) growsFrom = Math.min(growsFrom, day);
      kgPerHa += grown;
      if (growsFrom <= day && firstPassKgPerHa <= kgPerHa) tallFrom = day;
    }
  });
  const told = past.filter((stay) => growsFrom <= stay.from).map((stay) => stay.from);
  const day = Math.min(...(told.length === 0 ? [tallFrom] : told));
  return day === Infinity ? undefined : day;
}
