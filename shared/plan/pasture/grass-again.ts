import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { GrazingProblem, Stay } from '../../pasture/grazing-problem.js';
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
  const isOwn = ({ herd }: Stay): boolean => herd === h;
  const own = books.stays.filter(isOwn);
  const out = turnOutOf({ ...problem, past: problem.past.filter(isOwn) }, { ...books, stays: own });
  const staysIn = own.length === 0 && out !== undefined && span.from <= out;
  return out === undefined || staysIn ? undefined : addDays(dateOf(out), YEAR);
}

/**
 * Day on which herds go out in spring: of a plan that begins later, as it was told, else when what winter
 * leaves and what usually grows come to the first pass. Cattle that go out on the first day of a plan, or
 * of which nothing was told before summer, may have been late.
 */
export function turnOutOf(problem: GrazingProblem, books: SeasonBooks): number | undefined {
  const [first] = books.stays;
  if (first?.start === 'turn-out' && problem.from < first.from) return first.from;
  const { growsFrom, tallFrom } = usualSpring(problem);
  const usual = Math.min(tallFrom, ...toldFrom(problem, growsFrom));
  if (first?.start === 'turn-out') return Math.min(first.from, usual);
  return usual < Infinity ? usual : first?.from;
}

/** The day on which they were told to go out this season, else the usual one, without a plan of what is ahead. */
export function outOfItself(problem: GrazingProblem): number | undefined {
  const { growsFrom, tallFrom } = usualSpring(problem);
  const told = toldFrom(problem, growsFrom);
  const day = Math.min(...(told.length === 0 ? [tallFrom] : told));
  return day === Infinity ? undefined : day;
}

const toldFrom = ({ past }: GrazingProblem, growsFrom: number): number[] =>
  past.filter((stay) => growsFrom <= stay.from).map((stay) => stay.from);

/** Days from which grass usually grows, and stands tall enough for a first pass; Infinity where it never does. */
function usualSpring({ swards, usualGrowth, growsKgPerHa, to }: GrazingProblem): {
  growsFrom: number;
  tallFrom: number;
} {
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
  return { growsFrom, tallFrom };
}
