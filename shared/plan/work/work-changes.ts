import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { formatHours } from '../../units/format.js';
import type { WorkWindow } from '../../schedule/work-windows.js';
import { finishDay, placedMinutes } from '../../schedule/work.js';
import type { KeptJob, KeptPlan } from '../../farm/kept-plan.js';
import { isFetch } from '../tasks/fetches.js';
import { unfitDay } from './days-that-suit.js';
import type { WholeWork } from './whole-work.js';
import { dayText, partWords, unfitWords } from './work-words.js';

/** What became of one piece of work from one plan to the next. */
export interface WorkChange {
  readonly key: string;
  readonly name: string;
  readonly belongsTo?: string;
  readonly kind: 'moved' | 'new' | 'gone' | 'fits-no-more' | 'fits-in-part' | 'fits-now';
  /** First day of it before and now. */
  readonly from?: string;
  readonly to?: string;
  readonly why: string;
}

/** What changed since an earlier plan, and why, by the first day it concerns. */
export function changesSince(
  kept: KeptPlan,
  work: WholeWork,
  windows: readonly WorkWindow[],
): WorkChange[] {
  const { needs, fitted, request, problem } = work;
  const daysSince = daysBetween(kept.plannedOn, request.today);
  const dateOf = (day: number): string => addDays(request.today, day);
  const changes: WorkChange[] = [];
  needs.forEach((need, i) => {
    const was = stillAhead(kept.jobs[need.key], problem.jobs[i]!.minutes, request.today);
    const now = fitted.plan[i]!;
    const to = now[0] ? dateOf(now[0].day) : undefined;
    const from = was?.pieces[0]?.date;
    const about = {
      key: need.key,
      name: need.name,
      ...(need.belongsTo ? { belongsTo: need.belongsTo.name } : {}),
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
    };
    if (!was) {
      // What lay beyond the end of the earlier plan has only come into sight.
      if (need.fromDay + daysSince < problem.days)
        changes.push({ ...about, kind: 'new', why: 'It was not in the plan before.' });
    } else if (to === undefined) {
      if (from !== undefined)
        changes.push({ ...about, kind: 'fits-no-more', why: whyNoMore(work, i, from) });
    } else if (from === undefined || lostNow(work, i) < lostBefore(was)) {
      // What the end of the earlier plan cut off has only come into sight.
      if (finishDay(now) + daysSince < problem.days)
        changes.push({
          ...about,
          kind: 'fits-now',
          why: 0 < lostNow(work, i) ? partWords(work, i) : 'There are hours and days for it now.',
        });
    } else if (lostBefore(was) < lostNow(work, i)) {
      changes.push({ ...about, kind: 'fits-in-part', why: partWords(work, i) });
    } else if (from !== to || was.pieces.at(-1)!.date !== dateOf(finishDay(now))) {
      changes.push({
        ...about,
        kind: 'moved',
        why: sentence(whyMoved(work, windows, i, was, kept)),
      });
    }
  });
  const newsUntil = addDays(request.today, FETCH_NEWS_DAYS);
  return [...changes, ...gone(kept, work)]
    .filter((change) => !isFetch(change.key) || dayIn(change) <= newsUntil)
    .sort((a, b) => (dayIn(a) < dayIn(b) ? -1 : 1));
}

/** Trips for feed that lie further ahead are laid out anew as the year goes by: no news, days. */
const FETCH_NEWS_DAYS = 180;

/** A job without the days before today on which it was worked as planned: those have not moved. */
function stillAhead(was: KeptJob | undefined, minutes: number, today: string): KeptJob | undefined {
  if (!was) return undefined;
  const pieces = was.pieces.filter(({ date }) => today <= date);
  const left = minutesOf({ ...was, pieces });
  return Math.abs(left - minutes) <= 1 ? { ...was, pieces } : was;
}

/** Minutes that a job of an earlier plan had in all, with those that found no place. */
const minutesOf = (was: KeptJob): number =>
  was.pieces.reduce((sum, { minutes }) => sum + minutes, lostBefore(was));

const lostBefore = ({ lostMinutes = 0 }: KeptJob): number => lostMinutes;
const lostNow = ({ problem, fitted }: WholeWork, index: number): number =>
  problem.jobs[index]!.minutes - placedMinutes(fitted.plan[index]!);

const dayIn = ({ from, to }: WorkChange): string => to ?? from ?? '';
const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** What is no longer asked for; what was ticked off or ran out is not news. */
function gone(kept: KeptPlan, { needs, request }: WholeWork): WorkChange[] {
  const keys = new Set(needs.map(({ key }) => key));
  const done = new Set(
    request.progress.filter((m) => m.doneOn !== undefined).map(({ key }) => key),
  );
  return Object.entries(kept.jobs)
    .filter(([key, { latest }]) => !keys.has(key) && !done.has(key) && request.today <= latest)
    .map(([key, { name, belongsTo, pieces }]) => ({
      key,
      name,
      ...(belongsTo === undefined ? {} : { belongsTo }),
      ...(pieces[0] ? { from: pieces[0].date } : {}),
      kind: 'gone' as const,
      why: 'It is no longer asked for.',
    }));
}

/** A day that went by comes first: without it there was room. */
function whyNoMore(work: WholeWork, index: number, from: string): string {
  const { request } = work;
  const day = daysBetween(request.today, from);
  const missed = day < 0 ? `${sentence(notTicked(dayText(request)(day)))} ` : '';
  return `${missed}${unfitWords(work, index)}`;
}

const notTicked = (date: string): string => `it was not ticked off on ${date}`;

/** The first thing that keeps a piece of work from the days it had. */
function whyMoved(
  work: WholeWork,
  windows: readonly WorkWindow[],
  index: number,
  was: KeptJob,
  kept: KeptPlan,
): string {
  const { request, needs, problem, fitted, days } = work;
  const need = needs[index]!;
  const job = problem.jobs[index]!;
  const date = dayText(request);
  const minutesWere = minutesOf(was);
  if (Math.abs(minutesWere - job.minutes) > 1)
    return `it takes ${hours(job.minutes)} now, not ${hours(minutesWere)}`;
  const latest = addDays(request.today, windows[index]!.latestDay);
  for (const piece of was.pieces) {
    const day = daysBetween(request.today, piece.date);
    if (day < 0) return notTicked(date(day));
    const mark = request.progress.find(({ key }) => key === need.key);
    if (mark?.notBefore !== undefined && piece.date < mark.notBefore)
      return `you put it off to ${date(daysBetween(request.today, mark.notBefore))}`;
    if (day < job.fromDay) return `it cannot begin before ${date(job.fromDay)} now`;
    for (const { job: before, days: waits } of job.waitsFor)
      if (day < finishDay(fitted.plan[before]!) + waits)
        return `it follows “${needs[before]!.name}”, which is on ${date(finishDay(fitted.plan[before]!))} now`;
    if (job.untilDay < day || (latest < piece.date && was.latest !== latest))
      return `its latest day is ${date(windows[index]!.latestDay)} now`;
    if (job.suits && job.suits[day] === 0) {
      const cause = unfitDay(need.conditions, days, day, request.tables.work.wetDay.rainMm);
      return `${cause ?? 'the day is not suitable'} on ${date(day)}`;
    }
    for (const id of piece.personIds) {
      const w = request.people.findIndex((person) => person.id === id);
      if (w < 0) return 'who was to do it is no longer among the people';
      const taker = takerOn(work, kept, index, w, day);
      if (taker !== undefined) return `the hours of ${date(day)} go to “${taker}” now`;
      if (problem.workers[w]!.minutes[day]! < piece.minutes)
        return `${request.people[w]!.name} has too few hours left on ${date(day)}`;
    }
  }
  return 'a better order of the work was found';
}

/** Work that now has a person's hours on a day, and did not have them before. */
function takerOn(
  { needs, fitted, request }: WholeWork,
  kept: KeptPlan,
  index: number,
  worker: number,
  day: number,
): string | undefined {
  const on = addDays(request.today, day);
  const taker = needs.findIndex(
    (need, i) =>
      i !== index &&
      fitted.plan[i]!.some((piece) => piece.day === day && piece.workers.includes(worker)) &&
      !(kept.jobs[need.key]?.pieces ?? []).some(({ date }) => date === on),
  );
  return needs[taker]?.name;
}

const hours = (minutes: number): string => formatHours(minutes / 60);
