import { addDays } from '../../calendar/plain-date.js';
import { formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { remediesFor } from '../../schedule/work-remedies.js';
import { placementReason, unfitReason, type UnfitBecause } from '../../schedule/work-reasons.js';
import type { WorkWindow } from '../../schedule/work-windows.js';
import { freeFrom } from '../../schedule/work-placing.js';
import { placedMinutes, type WorkJob } from '../../schedule/work.js';
import { unfitDay } from './days-of-work.js';
import { coverWords } from './nights-of-cover.js';
import { spellWords } from './spell-words.js';
import { suitsNeed } from './suits-of-needs.js';
import { wayByWeather } from './ways-by-weather.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** Days from today as the household reads their dates. */
export const dayText =
  ({ farm, today }: WorkRequest): ((day: number) => string) =>
  (day) =>
    formatDate(addDays(today, day), { units: farm.units, today });

/** Days that are named one by one before they are counted. */
const NAMED_DAYS = 2;

/** Why a piece of work stands on its day, in words that can be read aloud. */
export function whyThen(work: WholeWork, windows: readonly WorkWindow[], index: number): string {
  const { needs, problem, fitted, request, days } = work;
  const need = needs[index]!;
  const date = dayText(request);
  if (problem.jobs[index]!.pinned) {
    const { latestDay } = windows[index]!;
    return latestDay < 0
      ? `Animals depend on it, and it was due by ${date(latestDay)}.`
      : 'It belongs to this day, and animals depend on it.';
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
  let isKept = false;
  for (const { day, because } of reason.refused) {
    if (because === 'kept-its-place') {
      isKept = true;
      continue;
    }
    const isSuitable = because === 'does-not-suit' && spellStarts?.[day] === 1;
    if (because === 'does-not-suit' && !isSuitable && days.isForecast[day] !== 1) {
      usual++;
      continue;
    }
    const cause =
      because === 'no-hours'
        ? 'the hours are taken'
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
  // Beyond the forecast a day is only like those of its season, and is not called wet by name.
  if (0 < usual)
    parts.push(
      `on ${usual === 1 ? 'one earlier day' : `${usual} earlier days`} the weather is usually wrong for it`,
    );
  if (isKept) parts.push('it stays where it was planned before');
  if (parts.length === 0) parts.push('the first day there is time for it');
  const spell = spellWords(work, index);
  if (spell !== undefined) parts.push(spell);
  const { latestDay, setBy } = windows[index]!;
  const last = setBy === undefined ? '' : `, as “${needs[setBy]!.name}” follows`;
  parts.push(
    latestDay < 0
      ? `already late: it was due by ${date(latestDay)}${last}`
      : `due by ${date(latestDay)}${last}`,
  );
  const sentence = `${parts.join('; ')}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1) + coverWords(work, index);
}

const UNFIT: Record<Exclude<UnfitBecause, 'holds-up' | 'no-room-found'>, string> = {
  past: 'Its last day is over.',
  'beyond-the-end': 'It is due after the last day of this plan.',
  'closed-window': 'Its last day comes before its first: the dates leave no day for it.',
  'too-few-able': 'It takes more people than there are who can do it.',
  'waits-for-unfit': 'What it waits for does not fit either.',
  'waits-too-long': 'What it waits for is done after its last day.',
  'never-suits': 'No day between its first and its last suits it.',
  'nobody-there': 'Nobody has hours on its suitable days.',
  'longer-than-any-day': 'It is longer than anybody’s day, and is not split.',
  'too-few-hours':
    'Its days have fewer hours than it takes, even if nothing else was done on them.',
};

/** Why a piece of work does not fit. */
export function unfitWords({ problem, fitted, needs }: WholeWork, index: number): string {
  const { because, takenBy, holdsUp } = unfitReason(problem, fitted.plan, index);
  const name = (i: number): string => `“${needs[i]!.name}”`;
  if (because === 'holds-up')
    return `There is time for it only after ${name(holdsUp!)} begins, which follows it.`;
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

/** What would make a piece of work fit, a sentence each. */
export function wordsToFit(work: WholeWork, index: number): string[] {
  const { problem, fitted, request, needs } = work;
  const { hours, laterDay, instead } = remediesFor(problem, fitted.plan, index);
  const date = dayText(request);
  const job = problem.jobs[index]!;
  const helper =
    1 < job.peopleNeeded
      ? ` from each of ${job.peopleNeeded} people`
      : job.smallestPieceMinutes === undefined
        ? `, or a helper for all ${formatHours(job.minutes / 60)} of it`
        : ', or a helper for as long';
  const isBoundToDay = job.fromDay === job.untilDay;
  const need = needs[index]!;
  const weather = wayByWeather(work, index);
  const ways = [
    ...(hours ? [`${formatHours(hours.minutes / 60)} more on ${date(hours.day)}${helper}.`] : []),
    ...(weather
      ? [`${weather.words}, if you can: it would be done on ${date(weather.doneOn)}.`]
      : []),
    ...(laterDay === undefined || isBoundToDay ? [] : laterWords(need, date(laterDay))),
    ...(fitsWhenSpread(work, index) ? ['Let it be spread over several days.'] : []),
    ...instead.map((i) => `Leave “${needs[i]!.name}” undone.`),
  ];
  const isNeeded = need.priority === 'must' || need.isBeforeEvent === true;
  const hasDays = Math.max(0, job.fromDay) <= job.untilDay;
  // What animals wait for, or the household must have, is not left without a way.
  if (0 < ways.length || !isNeeded || !hasDays) return ways;
  const missing = job.peopleNeeded - job.able.length;
  return [0 < missing && 0 < job.able.length ? moreHands(job, missing) : doneByOthers(job)];
}

/** Work for two, where one is there. */
const moreHands = ({ minutes, peopleNeeded }: WorkJob, missing: number): string =>
  `It takes ${peopleNeeded} people: have ${missing === 1 ? 'somebody' : `${missing} others`} come to help for ${formatHours(minutes / 60)}.`;

const doneByOthers = ({ minutes, peopleNeeded, suits }: WorkJob): string =>
  `Have somebody else do all ${formatHours((minutes * peopleNeeded) / 60)} of it${suits ? ', in whatever weather comes' : ''}.`;

/** What makes ready for animals is of no use after them: then it is they who come later. */
function laterWords({ isBeforeEvent, belongsTo, prepares }: WorkNeed, doneOn: string): string[] {
  if (!isBeforeEvent) return [`A later last day: it would be done on ${doneOn}.`];
  // A batch that comes later is tried with all of its work together.
  if (belongsTo?.kind !== 'herd' || !prepares) return [];
  return [`Let “${prepares.name}” wait until this is done, on ${doneOn}.`];
}

/** Whether work of the household’s own, done in one go, would have its hours on several days. */
function fitsWhenSpread({ problem, fitted, needs, left }: WholeWork, index: number): boolean {
  const job = problem.jobs[index]!;
  const from = freeFrom(job, fitted.plan);
  if (needs[index]!.belongsTo || job.smallestPieceMinutes !== undefined || from < 0) return false;
  const pieces = left.put(
    { ...job, smallestPieceMinutes: AN_HOUR, untilDay: job.dueDay },
    Math.max(0, from),
  );
  left.giveBack(job, pieces);
  return job.minutes <= placedMinutes(pieces);
}

const AN_HOUR = 60;
