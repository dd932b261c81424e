import { addDays } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { placementReason, unfitReason, type UnfitBecause } from '../../schedule/work-reasons.js';
import type { WorkWindow } from '../../schedule/work-windows.js';
import { finishDay, placedMinutes } from '../../schedule/work.js';
import { unfitDay } from './days-that-suit.js';
import { coverWords } from './nights-of-cover.js';
import { liesWords, spellWords } from './spell-words.js';
import { oddsOfADay, suitsNeed } from './suits-of-needs.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';
import { isWorthTelling } from './worth-telling.js';

/** Days from today as the household reads their dates. */
export const dayText =
  ({ farm, today }: WorkRequest): ((day: number) => string) =>
  (day) =>
    formatDate(addDays(today, day), { units: farm.units, today });

function withinDays(days: number): string {
  if (days === 0) return 'the same day';
  return days === 1 ? 'within a day' : `within ${days} days`;
}

/** Said of work that was put on its day with all that is done in the same dry spell. */
const TORN_SPELL =
  'It is done within a few dry days with what goes before and after it, and no days in a row have the hours for all of that: on these the fewest are wanting';

/** Days that are named one by one before they are counted. */
const NAMED_DAYS = 2;

/** Why a piece of work stands on its day, in words that can be read aloud. */
export function whyThen(work: WholeWork, windows: readonly WorkWindow[], index: number): string {
  const { needs, problem, fitted, request, days } = work;
  const need = needs[index]!;
  const date = dayText(request);
  if (problem.jobs[index]!.pinned && need.isBoundToADay && !need.animalsNeedIt) {
    const spell = spellWords(work, index);
    return `${[TORN_SPELL, ...(spell === undefined ? [] : [spell])].join('; ')}.`;
  }
  if (problem.jobs[index]!.pinned) {
    const { latestDay } = windows[index]!;
    const depends = need.isForMeat ? 'the meat depends on it' : 'animals depend on it';
    const atFirst = depends.charAt(0).toUpperCase() + depends.slice(1);
    const why =
      latestDay < 0
        ? `${atFirst}, and it was due by ${date(latestDay)}`
        : need.isBoundToADay
          ? `${atFirst}, and none of its days has the hours and the weather for it: it is done all the same`
          : `It belongs to this day, and ${depends}`;
    return `${[why, ...withoutWords(need), ...beforeItsTurn(work, index)].join('; ')}.`;
  }
  const reason = placementReason(problem, fitted.plan, index, work.left);
  const parts: string[] = [];
  if (reason.heldBy !== undefined) {
    parts.push(`after “${needs[reason.heldBy]!.name}”, so not before ${date(reason.allowedFrom)}`);
  } else if (0 < reason.allowedFrom) {
    parts.push(`not before ${date(reason.allowedFrom)}`);
  }
  const { wetDay } = request.tables.work;
  const spellStarts =
    need.conditions.dryDaysInRow === undefined ? undefined : suitsNeed(need, days, wetDay.rainMm);
  const named = new Map<string, number[]>();
  let usual = 0;
  let lastCold = -1;
  let isKept = false;
  for (const { day, because } of reason.refused) {
    if (because === 'kept-its-place') {
      isKept = true;
      continue;
    }
    const isSuitable = because === 'does-not-suit' && spellStarts?.[day] === 1;
    const isShut = need.conditions.shopsOpen === true && days.isShut[day] === 1;
    if (because === 'does-not-suit' && !isSuitable && !isShut && days.isForecast[day] !== 1) {
      if (days.soilC[day]! < (need.conditions.soilAtLeastC ?? -Infinity))
        lastCold = Math.max(lastCold, day);
      else usual++;
      continue;
    }
    const cause =
      because === 'no-hours'
        ? 'the hours are taken'
        : because === 'kept-free'
          ? 'the last hours of the day are left free, as it can wait,'
          : because === 'no-light'
            ? 'no hours in daylight'
            : isSuitable
              ? 'no hours for the rest of it in the dry days after'
              : (unfitDay(need.conditions, days, day, wetDay.rainMm) ?? 'the day is not suitable');
    named.set(cause, [...(named.get(cause) ?? []), day]);
  }
  for (const [cause, list] of named) {
    parts.push(
      list.length <= NAMED_DAYS
        ? `${cause} on ${list.map(date).join(' and ')}`
        : `${cause} on ${list.length} days before`,
    );
  }
  if (0 <= lastCold) parts.push(`the soil is usually too cold for it until ${date(lastCold)}`);
  // Beyond the forecast a day is only like those of its season, and is not called wet by name.
  if (0 < usual) {
    const from = Math.max(0, reason.allowedFrom, lastCold + 1);
    const until = Math.max(windows[index]!.latestDay, finishDay(fitted.plan[index]!));
    parts.push(
      spellStarts
        ? `on ${usual === 1 ? 'one earlier day' : `${usual} earlier days`} the weather is usually wrong for it`
        : usuallyFit(work, index, { from, until }),
    );
  }
  if (reason.followedBy) {
    const { job: next, from } = reason.followedBy;
    const { atMostDays = 0 } = problem.jobs[next]!.waitsFor.find(({ job }) => job === index)!;
    const within = withinDays(atMostDays);
    parts.push(`no sooner than ${date(from)}, as “${needs[next]!.name}” follows ${within}`);
  }
  if (isKept) parts.push('it stays where it was planned before');
  if (parts.length === 0) parts.push('the first day there is time for it');
  parts.push(...withoutWords(need), ...beforeItsTurn(work, index));
  parts.push(...tooLongAfter(work, index));
  const spell = spellWords(work, index);
  if (spell !== undefined) parts.push(spell);
  const lies = liesWords(work, index);
  if (lies !== undefined) parts.push(lies);
  const { latestDay, setBy } = windows[index]!;
  const last = setBy === undefined ? '' : `, as “${needs[setBy]!.name}” follows`;
  parts.push(
    latestDay < 0
      ? `already late: it was due by ${date(latestDay)}${last}`
      : latestDay === 0
        ? `due today${last}`
        : `due by ${date(latestDay)}${last}`,
  );
  const sentence = `${parts.join('; ')}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1) + coverWords(work, index);
}

/** How many of some days usually suit work: which of them it will be is seen when they come. */
function usuallyFit(
  { needs, days, request }: WholeWork,
  index: number,
  { from, until }: { from: number; until: number },
): string {
  const date = dayText(request);
  const suits = suitsNeed(needs[index]!, days, request.tables.work.wetDay.rainMm)!;
  const fit = suits.subarray(from, until + 1).reduce((sum, is) => sum + is, 0);
  const of = `of the ${until - from + 1} days from ${date(from)} to ${date(until)}`;
  return `usually about ${fit} ${of} ${fit === 1 ? 'suits' : 'suit'} it: take the first that ${fit === 1 ? 'does' : 'do'}`;
}

/** What should come first, and has no place: animals do not wait for it. */
const withoutWords = ({ doneWithout = [] }: WorkNeed): string[] =>
  doneWithout.length === 0
    ? []
    : [
        `without ${listed(doneWithout.map((name) => `“${name}”`))}, as there is no time for that before`,
      ];

/** What should come first, and is not done by then. */
interface NotDone {
  readonly name: string;
  readonly days: number;
  /** Left out where not all of it has a place. */
  readonly doneDay?: number;
  /** Some of it is done on a later day. */
  readonly isLater: boolean;
}

/** What should come before work that does not wait for it, as it has a set day, and is not done by then. */
export function notDoneBefore({ needs, fitted, problem }: WholeWork, index: number): NotDone[] {
  const first = fitted.plan[index]![0];
  const { follows = [], waitsFor, doneWithout = [] } = needs[index]!;
  if (!first) return [];
  return follows.flatMap(({ key, days }) => {
    const at = needs.findIndex((need) => need.key === key);
    const before = needs[at];
    const isHeld = waitsFor.some((wait) => wait.key === key);
    if (!before || isHeld || doneWithout.includes(before.name)) return [];
    const { pinned, minutes } = problem.jobs[at]!;
    const pieces = fitted.plan[at]!;
    const isWhole = pinned !== undefined || !isWorthTelling((minutes - placedMinutes(pieces)) / 60);
    const doneDay = finishDay(pieces);
    if (isWhole && doneDay + days <= first.day) return [];
    const isLater = first.day < doneDay;
    return [{ name: before.name, days, ...(isWhole ? { doneDay } : {}), isLater }];
  });
}

function beforeItsTurn(work: WholeWork, index: number): string[] {
  const date = dayText(work.request);
  return notDoneBefore(work, index).map(({ name, days, doneDay }) => {
    const ahead = days === 0 ? '' : days === 1 ? 'a day ' : `${days} days `;
    return doneDay === undefined
      ? `“${name}” should be done before it, and there is no time for all of that`
      : `“${name}” should be done ${ahead}before it, and is done on ${date(doneDay)}`;
  });
}

/** What lies longer before it than it should, as no days had the hours for both. */
function tooLongAfter({ needs, fitted, problem }: WholeWork, index: number): string[] {
  const first = fitted.plan[index]![0]!.day;
  return needs[index]!.waitsFor.flatMap(({ key, atMostDays }) => {
    if (atMostDays === undefined) return [];
    const before = needs.findIndex((need) => need.key === key);
    const days = first - finishDay(fitted.plan[before] ?? []);
    if (before < 0 || fitted.plan[before]!.length === 0 || days <= atMostDays) return [];
    const said = `${atMostDays === 1 ? 'a day' : `${atMostDays} days`} after it should be the most`;
    const both = [problem.jobs[index]!, problem.jobs[before]!];
    const why = both.some(({ pinned }) => pinned)
      ? 'one of them has its set day'
      : both.some(({ smallestPieceMinutes }) => smallestPieceMinutes !== undefined)
        ? 'work that is done in pieces is not held to that'
        : 'no such days were found that have time for both';
    return [`“${needs[before]!.name}” is done ${days} days before, where ${said}: ${why}`];
  });
}

/** Said of work that nothing more can be done about. */
export const LAST_DAY_IS_OVER = 'Its last day is over.';

const UNFIT: Record<
  Exclude<UnfitBecause, 'holds-up' | 'no-room-found' | 'too-few-at-once'>,
  string
> = {
  past: LAST_DAY_IS_OVER,
  'beyond-the-end': 'It is due after the last day of this plan.',
  'closed-window': 'Its last day comes before its first: the dates leave no day for it.',
  'too-few-able': 'It takes more people than there are who can do it.',
  'waits-for-unfit': 'What it waits for does not fit either.',
  'waits-too-long': 'What it waits for is done after its last day.',
  'never-suits': 'No day between its first and its last suits it.',
  'nobody-there': 'Nobody has hours on its suitable days.',
  'longer-than-any-day': 'Nobody has the time for it in one go on any of its days.',
  'none-soon-enough': 'There is no time for it soon enough after what it follows.',
  'too-few-hours':
    'Its days have fewer hours than it takes, even if nothing else was done on them.',
};

function isFrozenThroughout({ needs, days }: WholeWork, index: number): boolean {
  const { conditions, fromDay, untilDay } = needs[index]!;
  const ofIt = days.isWintry.subarray(Math.max(0, fromDay), untilDay + 1);
  return conditions.dryGround === true && 0 < ofIt.length && ofIt.every((is) => is === 1);
}

/** None of its days suits in usual weather: said with the years in which one does. */
function neverSuitsWords({ needs, days, request }: WholeWork, index: number): string {
  const need = needs[index]!;
  const [from, until] = [
    Math.max(0, need.fromDay),
    Math.min(need.untilDay, days.rainMm.length - 1),
  ];
  const { wetDay } = request.tables.work;
  const { share } = oddsOfADay(need, days, { from, until, wetFromMm: wetDay.rainMm });
  const years = Math.round(10 * share);
  if (years === 0) return UNFIT['never-suits'];
  return `Of the days from ${dayText(request)(from)} to ${dayText(request)(until)} one suits it in about ${years} of 10 years: do it if one does.`;
}

/** Why a piece of work does not fit. */
export function unfitWords(work: WholeWork, index: number): string {
  const { problem, fitted, needs } = work;
  const { because, takenBy, holdsUp } = unfitReason(problem, fitted.plan, index);
  const name = (i: number): string => `“${needs[i]!.name}”`;
  if (because === 'holds-up')
    return `There is time for it only after ${name(holdsUp!)} begins, which follows it.`;
  if (because === 'too-few-at-once')
    return `It takes ${problem.jobs[index]!.peopleNeeded} people at once: on none of its days do so many have the time for it.`;
  if (because === 'never-suits' && isFrozenThroughout(work, index))
    return 'The ground is frozen or under snow on all of its days.';
  if (because === 'never-suits') return neverSuitsWords(work, index);
  if (because !== 'no-room-found') return UNFIT[because];
  const tried = 'No room was found on its days in any order that was tried.';
  if (takenBy.length === 0) return tried;
  const named = takenBy.slice(0, NAMED_JOBS).map(name);
  const others = takenBy.length - named.length;
  const all = 0 < others ? [...named, `${others} more`] : named;
  return `${tried} Their hours go to ${listed(all)}.`;
}

const NAMED_JOBS = 2;

/** How much of a piece of work fits, and why no more. */
export function partWords(work: WholeWork, index: number): string {
  const { minutes } = work.problem.jobs[index]!;
  const placed = placedMinutes(work.fitted.plan[index]!);
  const [fits, all, lost] = [placed, minutes, minutes - placed].map((m) => formatHours(m / 60));
  return `${fits} of ${all} fit; there is no place for the last ${lost}. ${unfitWords(work, index)}`;
}
