import { addDays } from '../../calendar/plain-date.js';
import { timeOf } from '../../farm/repeated-jobs.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { followersOf, freeFrom, spanOf } from '../../schedule/work-span.js';
import { daysLeft } from '../../schedule/work-reasons.js';
import { remediesFor, type MayAsk } from '../../schedule/work-remedies.js';
import { costOf, finishDay, placedMinutes, type WorkJob } from '../../schedule/work.js';
import type { WorkPlacing } from '../../schedule/work.js';
import { mayBeAskedFor } from './most-of-day.js';
import { doneByOthers, waysByHands } from './ways-by-hands.js';
import { wayByWeather, type WeatherWay } from './ways-by-weather.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import { isThere } from './work-people.js';
import { dayText } from './work-words.js';

/** What would make a piece of work fit, a sentence each. */
export function wordsToFit(work: WholeWork, index: number): string[] {
  const { problem, fitted, request, needs } = work;
  const { hours, laterDay, instead } = remediesFor(problem, fitted.plan, index, {
    mayAsk: mayAskIn(work),
  });
  const date = dayText(request);
  const job = problem.jobs[index]!;
  const isBoundToDay = job.fromDay === job.untilDay;
  const need = needs[index]!;
  const weather = wayByWeather(work, index);
  const ways = [
    ...(hours ? [hoursWords(work, index, hours)] : []),
    ...(weather ? [weatherWords(weather, date)] : []),
    ...(laterDay === undefined || isBoundToDay
      ? []
      : need.isRawManure
        ? pickedLater(work, laterDay)
        : laterWords(need, date(laterDay))),
    ...(fitsWhenSpread(work, index) ? ['Let it be spread over several days.'] : []),
    ...instead.map((i) => `Leave “${needs[i]!.name}” undone.`),
  ];
  const hasDays = Math.max(0, job.fromDay) <= job.untilDay;
  // What animals wait for, or the household must have, is not left without a way.
  if (0 < ways.length) return ways;
  const before = waitedFor(work, index, job.untilDay);
  if (before !== undefined) return [`Fits once “${needs[before]!.name}” is done.`];
  if (!hasDays) return isNeeded(need) ? [doneByOthers(job)] : ways;
  const missing = job.peopleNeeded - job.able.length;
  if (0 < missing) return [0 < job.able.length ? moreHands(job, missing) : doneByOthers(job)];
  return waysByHands(work, index, job.untilDay);
}

/**
 * What would have work done in time that is done late, a sentence each; of what is late already
 * nothing would.
 */
export function wordsInTime(work: WholeWork, index: number, latestDay: number): string[] {
  if (latestDay < 0) return [];
  const { problem, fitted, request, needs } = work;
  const before = waitedFor(work, index, latestDay);
  if (before !== undefined) return [`In time once “${needs[before]!.name}” is.`];
  const { hours, instead } = remediesFor(problem, fitted.plan, index, {
    byDay: latestDay,
    mayAsk: mayAskIn(work),
  });
  const date = dayText(request);
  const coldUntil = coldUntilDay(work, index, latestDay);
  if (coldUntil !== undefined)
    return [
      `A later day to have it done by: the soil is usually too cold for it until ${date(coldUntil)}.`,
    ];
  const weather = wayByWeather(work, index);
  const isInTime = weather !== undefined && weather.doneOn <= latestDay;
  const ways = [
    ...(hours ? [hoursWords(work, index, hours)] : []),
    ...(isInTime ? [weatherWords(weather, date)] : []),
    ...(needs[index]!.isRawManure && fitted.plan[index]![0]
      ? pickedLater(work, finishDay(fitted.plan[index]!))
      : []),
    ...instead.map((i) => `Leave “${needs[i]!.name}” undone.`),
  ];
  if (0 < ways.length) return ways;
  const held = inTheWay(work, index, latestDay);
  return held.length === 0
    ? waysByHands(work, index, latestDay)
    : [onceOthersAre(work, index, held)];
}

const mayAskIn =
  ({ request }: WholeWork): MayAsk =>
  (w, day) =>
    mayBeAskedFor(request.people[w]!, addDays(request.today, day), request);

/** What is done too late for work to be done by a day after it, and what holds that up: the first first. */
function inTheWay({ problem, fitted }: WholeWork, index: number, byDay: number): number[] {
  const found = new Set<number>();
  const walk = (i: number, by: number): void => {
    for (const wait of problem.jobs[i]!.waitsFor) {
      const until = by - wait.days;
      const finish = finishDay(fitted.plan[wait.job]!);
      if (found.has(wait.job) || (0 <= finish && finish <= until)) continue;
      walk(wait.job, until);
      found.add(wait.job);
    }
  };
  walk(index, byDay);
  return [...found];
}

/** Nobody can do in time what comes after work that is late itself. */
function onceOthersAre(
  { needs, problem }: WholeWork,
  index: number,
  held: readonly number[],
): string {
  const { minutes, peopleNeeded } = problem.jobs[index]!;
  const names = listed(held.map((i) => `“${needs[i]!.name}”`));
  return `In time once ${names} ${held.length === 1 ? 'is' : 'are'}, with somebody else for all ${formatHours((minutes * peopleNeeded) / 60)} of it.`;
}

/** Raw manure that is spread late is in time for what is picked later. */
function pickedLater({ request }: WholeWork, day: number): string[] {
  const { touchingSoilDays, offSoilDays } = request.tables.pasture.rawManure;
  const date = dayText(request);
  return [
    `Grow there what is picked from ${date(day + touchingSoilDays)} on, or off the soil from ${date(day + offSoilDays)}: for that, ${date(day)} is in time.`,
    'Spread finished compost instead: nothing waits for that.',
  ];
}

/** The last day on which the soil is too cold for work that is due while it is; nobody sows in that. */
function coldUntilDay(
  { needs, days }: WholeWork,
  index: number,
  latestDay: number,
): number | undefined {
  const { soilAtLeastC = -Infinity } = needs[index]!.conditions;
  if (soilAtLeastC <= days.soilC[latestDay]!) return undefined;
  const warm = days.soilC.findIndex((soilC, day) => latestDay < day && soilAtLeastC <= soilC);
  return warm < 0 ? undefined : warm - 1;
}

const isNeeded = ({ priority, isBeforeEvent }: WorkNeed): boolean =>
  priority === 'must' || isBeforeEvent === true;

const weatherWords = ({ words, doneOn }: WeatherWay, date: (day: number) => string): string =>
  `${words}, if you can: it would be done on ${date(doneOn)}.`;

function hoursWords(
  work: WholeWork,
  index: number,
  { day, minutes }: { readonly day: number; readonly minutes: number },
): string {
  const { request } = work;
  const job = work.problem.jobs[index]!;
  const date = dayText(request)(day);
  const on = addDays(request.today, day);
  // Nobody who is away is asked for more.
  const there = job.able.filter((w) => isThere(request.people[w]!, on, request));
  const missing = job.peopleNeeded - there.length;
  if (0 < missing) {
    const helpers = missing === 1 ? 'A helper' : `${missing} helpers`;
    return `${helpers} on ${date} for all ${formatHours(job.minutes / 60)} of it${beside(work, index, there, day)}.`;
  }
  const helper =
    1 < job.peopleNeeded
      ? ` from each of ${job.peopleNeeded} people`
      : job.smallestPieceMinutes === undefined
        ? `, or a helper for all ${formatHours(job.minutes / 60)} of it`
        : ', or a helper for as long, whose hours you tell as done';
  const late = Math.max(0, job.dueDay) < day ? ' It is late even so.' : '';
  const others = mayGoToOthers(work, index, day) ? ' Other late work may want them more.' : '';
  const who = fromWhom(work, index, { day, minutes });
  return `${formatHours(minutes / 60)} more on ${date}${who}${helper}.${late}${others}`;
}

/** Who has to stay longer, where so much is enough of one of them and not of another. */
function fromWhom(
  { request, problem, left }: WholeWork,
  index: number,
  { day, minutes }: { readonly day: number; readonly minutes: number },
): string {
  const job = problem.jobs[index]!;
  if (1 < job.peopleNeeded || job.smallestPieceMinutes !== undefined) return '';
  const enough = job.able.filter((w) => job.minutes <= left.left(job, w, day) + minutes);
  return enough.length === 0 || enough.length === job.able.length
    ? ''
    : ` from ${listed(
        enough.map((w) => request.people[w]!.name),
        'or',
      )}`;
}

/** Those who are at home for work of several, and what each lacks for it. */
function beside(
  { problem, request, left }: WholeWork,
  index: number,
  there: number[],
  day: number,
) {
  const job = problem.jobs[index]!;
  const each = there.map((w) => {
    const lacks = job.minutes - left.left(job, w, day);
    return `${request.people[w]!.name}${lacks <= 0 ? '' : ` with ${formatHours(lacks / 60)} more`}`;
  });
  return each.length === 0 ? '' : `, beside ${each.join(' and ')}`;
}

/** Whether work of the same people is late or undone that costs more and could be done on a day too. */
function mayGoToOthers({ problem, fitted }: WholeWork, index: number, day: number): boolean {
  const { jobs } = problem;
  const { able } = jobs[index]!;
  const cost = costOf(jobs[index]!, fitted.plan[index]!);
  return jobs.some(
    (other, i) =>
      !other.pinned &&
      other.fromDay <= day &&
      day <= other.untilDay &&
      able.some((w) => other.able.includes(w)) &&
      cost < costOf(other, fitted.plan[i]!),
  );
}

/**
 * The one job that holds up another, where that would be done by a day if the one was done by its
 * own last: then it is the one that wants mending.
 */
function waitedFor(
  { problem, fitted }: WholeWork,
  index: number,
  byDay: number,
): number | undefined {
  const job = problem.jobs[index]!;
  const late = job.waitsFor
    .map((wait) => wait.job)
    .filter((i) => {
      const finish = finishDay(fitted.plan[i]!);
      return finish < 0 || problem.jobs[i]!.dueDay < finish;
    });
  const [before] = late;
  if (late.length !== 1 || before === undefined) return undefined;
  const day = Math.max(0, problem.jobs[before]!.dueDay);
  const plan: WorkPlacing = fitted.plan.map((pieces, i) =>
    i === before ? [{ day, minutes: 0, workers: [] }] : i === index ? [] : pieces,
  );
  const days = daysLeft(problem, plan);
  const { from, until } = spanOf(job, followersOf(problem)[index]!, plan);
  return placedMinutes(days.put(job, from, Math.min(byDay, until))) < job.minutes
    ? undefined
    : before;
}

/** Work for two, where one is there. */
const moreHands = ({ minutes, peopleNeeded }: WorkJob, missing: number): string =>
  `It takes ${peopleNeeded} people: have ${missing === 1 ? 'somebody' : `${missing} others`} come to help for ${formatHours(minutes / 60)}.`;

/**
 * What makes ready for animals is of no use after them: then it is they who come later. One time of
 * repeated work has no later day: the next time comes before that.
 */
function laterWords({ isBeforeEvent, key }: WorkNeed, doneOn: string): string[] {
  // Of what makes ready for an event, the event is named as what to move.
  if (timeOf(key) || isBeforeEvent) return [];
  return [`A later last day: it would be done on ${doneOn}.`];
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
