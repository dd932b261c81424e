import type { RotationProblem } from '../../pasture/rotation-problem.js';
import type { SeasonBooks, StayRecord } from '../../pasture/season-books.js';
import { optionsOf } from '../../pasture/stay-options.js';
import type { PastureContext } from './pasture-context.js';

/** Why a stay begins on its day. */
export type StayStart = 'out-already' | 'turn-out' | 'next' | 'after-hay';

/** Why a stay ends when it does. */
export type StayEnd =
  'longest' | 'eaten-down' | 'shut' | 'herd-gone' | 'plan-ends' | 'better-order';

export const START_WORDS: Record<StayStart, string> = {
  'out-already': 'the herd is on grass when the plan begins',
  'turn-out': 'turn-out: the first day the rules allow',
  next: 'the stay before has ended',
  'after-hay': 'grass is ready again after days on hay',
};

export const END_WORDS: Record<StayEnd, string> = {
  longest: 'the longest stay allowed is over',
  'eaten-down': 'a stay of a day more would run short of grass',
  shut: 'the paddock is closed from the next day on',
  'herd-gone': 'no animal of the herd grazes on the next day',
  'plan-ends': 'the plan ends',
  'better-order': 'grass is left, but the season needs less feed when they move on',
};

export function startOfStay(
  context: PastureContext,
  books: SeasonBooks,
  stay: StayRecord,
): StayStart {
  const before = stayBefore(books, stay);
  if (before) return before.from + before.days === stay.from ? 'next' : 'after-hay';
  if (context.herds[stay.herd]!.inPaddockId === undefined) return 'turn-out';
  return stay.from === context.span.from ? 'out-already' : 'after-hay';
}

/** The herd's stay before this one. */
export const stayBefore = (books: SeasonBooks, stay: StayRecord): StayRecord | undefined =>
  books.stays.findLast((each) => each.herd === stay.herd && each.from < stay.from);

/**
 * Asks the search itself whether the stay could have been a day longer.
 *
 * @param problem the one that the order of moves was found for
 */
export function endOfStay(problem: RotationProblem, books: SeasonBooks, stay: StayRecord): StayEnd {
  const next = stay.from + stay.days;
  if (problem.to <= next) return 'plan-ends';
  const sward = problem.swards[stay.paddock]!;
  const { startsIn, ...herd } = problem.herds[stay.herd]!;
  if (herd.demandKg[next]! <= 0) return 'herd-gone';
  if (sward.isClosed[next] !== 0) return 'shut';
  const standsIn =
    startsIn?.paddock === stay.paddock && stay.from === problem.from
      ? { startsIn: { paddock: 0, since: startsIn.since } }
      : {};
  const stoodDays = standsIn.startsIn ? problem.from - standsIn.startsIn.since : 0;
  if (herd.longestStayDays - stoodDays <= stay.days) return 'longest';
  const alone = { ...problem, swards: [sward], herds: [{ ...herd, ...standsIn }] };
  const options = optionsOf(alone, {
    free: [stay.from],
    at: [-1],
    isOut: [true],
    mass: Float64Array.of(stay.massBefore),
    massDay: Int16Array.of(stay.from),
    lastEnd: Int16Array.of(lastEndBefore(problem, books, stay)),
    costKg: 0,
  });
  const couldBeLonger = options.some((each) => 0 <= each.paddock && stay.days < each.days);
  return couldBeLonger ? 'better-order' : 'eaten-down';
}

/** Day after the paddock was last grazed, before a stay. */
function lastEndBefore(problem: RotationProblem, books: SeasonBooks, stay: StayRecord): number {
  const before = books.stays.findLast((s) => s.paddock === stay.paddock && s.from < stay.from);
  if (before) return before.from + before.days;
  return problem.swards[stay.paddock]!.lastGrazedEnd ?? stay.from - LONG_REST_DAYS;
}

/** After so long any paddock is rested. */
const LONG_REST_DAYS = 1000;
