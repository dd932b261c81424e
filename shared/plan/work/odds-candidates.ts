import { addDays, weekdayOf } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { sunHours } from '../../calendar/clock-offset.js';
import type { Worker, WorkJob, WorkProblem } from '../../schedule/work.js';
import type { Candidate } from './better-odds.js';
import type { PlayedWork } from './played-work.js';
import type { WholeWork } from './whole-work.js';
import { hoursOn, type WorkPerson } from './work-people.js';

const SATURDAY = 6;
const HOUR = 60;
/** Nobody is asked to come for less. */
const HELP_FROM_MINUTES = 60;
/** Saturdays tried for one job, and other jobs that might be left out for it. */
const MOST_SATURDAYS = 6;
const MOST_WITHOUT = 5;

/**
 * Changes that a household can make for work that is unlikely to get done: an hour more on
 * Saturdays, a helper on one of them, one job less.
 */
export const oddsCandidates = (
  work: WholeWork,
  played: PlayedWork,
  unlikely: readonly number[],
): Candidate[] =>
  [
    ...hourMore(work, played, unlikely),
    ...helpers(work, played, unlikely),
    ...without(work, played, unlikely),
  ].filter(({ helps }) => 0 < helps.length);

/** Of each adult, and of all of them. */
function hourMore(
  { request }: WholeWork,
  { problem }: PlayedWork,
  unlikely: readonly number[],
): Candidate[] {
  const { today } = request;
  const people: readonly WorkPerson[] = request.people;
  const adults = people.flatMap((person, w) =>
    !isGrownUp(person) || person.comesInFor !== undefined ? [] : [w],
  );
  const isAtHome = (w: number, day: number): boolean => {
    const date = addDays(today, day);
    return weekdayOf(date) === SATURDAY && 0 < hoursOn(people[w]!, date, request);
  };
  const sets = [...adults.map((w) => [w]), ...(1 < adults.length ? [adults] : [])];
  return sets.map((some): Candidate => ({
    told: {
      kind: 'hour-a-week',
      ...(some.length === 1
        ? { personId: people[some[0]!]!.id, name: people[some[0]!]!.name }
        : {}),
    },
    helps: unlikely.filter((i) => problem.jobs[i]!.able.some((w) => some.includes(w))),
    problem: {
      ...problem,
      workers: problem.workers.map((worker, w) =>
        some.includes(w) ? withHour(worker, (day) => isAtHome(w, day)) : worker,
      ),
    },
  }));
}

/** An hour more on some days, in daylight where any of that day's hours are. */
const withHour = (
  { minutes, lightMinutes, ...rest }: Worker,
  isOn: (day: number) => boolean,
): Worker => ({
  ...rest,
  minutes: minutes.map((free, day) => free + (isOn(day) ? HOUR : 0)),
  lightMinutes: lightMinutes.map((light, day) => light + (0 < light && isOn(day) ? HOUR : 0)),
});

/** Somebody who comes on one day and can do what any adult can. */
function helpers(work: WholeWork, played: PlayedWork, unlikely: readonly number[]): Candidate[] {
  const { request, needs } = work;
  const { problem } = played;
  const helps = unlikely.filter(
    (i) =>
      needs[i]!.personIds === undefined &&
      needs[i]!.forWhom !== 'child' &&
      HELP_FROM_MINUTES <= problem.jobs[i]!.minutes,
  );
  const saturdays = new Map<number, number[]>();
  for (const i of helps)
    for (const day of daysForHelp(played, i, request.today))
      saturdays.set(day, [...(saturdays.get(day) ?? []), i]);
  const helper = problem.workers.length;
  const jobs = problem.jobs.map((job, i): WorkJob => {
    const { personIds, forWhom } = needs[i]!;
    const isOpen = personIds === undefined && forWhom !== 'child' && !job.pinned;
    return isOpen ? { ...job, able: [...job.able, helper] } : job;
  });
  return [...saturdays].map(([day, whom]): Candidate => ({
    told: { kind: 'helper', date: addDays(request.today, day) },
    helps: whom,
    problem: { ...problem, jobs, workers: [...problem.workers, helperOn(work, day)] },
  }));
}

/** Saturdays of a job's dates, evenly over them where they are many; without one, its latest day. */
function daysForHelp({ problem, windows }: PlayedWork, i: number, today: string): number[] {
  const { latestDay } = windows[i]!;
  const all: number[] = [];
  const from = Math.max(0, problem.jobs[i]!.fromDay);
  for (let day = from; day <= Math.min(latestDay, problem.days - 1); day++)
    if (weekdayOf(addDays(today, day)) === SATURDAY) all.push(day);
  if (all.length === 0) return [latestDay];
  if (all.length <= MOST_SATURDAYS) return all;
  const step = (all.length - 1) / (MOST_SATURDAYS - 1);
  return Array.from({ length: MOST_SATURDAYS }, (_, k) => all[Math.round(k * step)]!);
}

function helperOn({ request, problem }: WholeWork, day: number): Worker {
  const { farm, tables, today } = request;
  const hours = tables.judgements.work.helperHours.value;
  const { riseH, setH } = sunHours(addDays(today, day), farm);
  const minutes = new Int32Array(problem.days);
  const lightMinutes = new Int32Array(problem.days);
  minutes[day] = Math.round(HOUR * hours);
  lightMinutes[day] = Math.round(HOUR * Math.min(hours, Math.max(0, setH - riseH)));
  return { minutes, lightMinutes };
}

/** One job less: of the household’s own that want the same people at the same time and are worth no more. */
function without(work: WholeWork, played: PlayedWork, unlikely: readonly number[]): Candidate[] {
  const { problem, windows } = played;
  const others = new Map<number, number[]>();
  for (const i of unlikely)
    for (const other of rivalsOf(work, played, i))
      others.set(other, [...(others.get(other) ?? []), i]);
  return [...others].map(([other, helps]): Candidate => ({
    told: {
      kind: 'without',
      key: work.needs[other]!.key,
      name: work.needs[other]!.name,
      date: addDays(work.request.today, windows[other]!.latestDay),
    },
    helps,
    problem: { ...problem, jobs: problem.jobs.with(other, leftOut(problem.jobs[other]!)) },
  }));
}

/** As good as done: what waits for it goes on without. */
const leftOut = (job: WorkJob): WorkJob => ({
  ...job,
  pinned: [{ day: 0, minutes: 0, workers: [] }],
});

function rivalsOf({ needs }: WholeWork, { problem, windows }: PlayedWork, i: number): number[] {
  const job = problem.jobs[i]!;
  const { latestDay } = windows[i]!;
  const before = allBefore(problem, i);
  return problem.jobs
    .map((other, k) => ({ other, k }))
    .filter(
      ({ other, k }) =>
        k !== i &&
        !before.has(k) &&
        !other.pinned &&
        needs[k]!.belongsTo === undefined &&
        needs[k]!.priority !== 'must' &&
        other.lostCost <= job.lostCost &&
        other.fromDay <= latestDay &&
        job.fromDay <= Math.min(other.untilDay, windows[k]!.latestDay) &&
        other.able.some((w) => job.able.includes(w)),
    )
    .sort((a, b) => b.other.minutes * b.other.peopleNeeded - a.other.minutes * a.other.peopleNeeded)
    .slice(0, MOST_WITHOUT)
    .map(({ k }) => k);
}

function allBefore({ jobs }: WorkProblem, i: number): Set<number> {
  const before = new Set<number>();
  const next = [i];
  while (0 < next.length)
    for (const { job } of jobs[next.pop()!]!.waitsFor) {
      if (before.has(job)) continue;
      before.add(job);
      next.push(job);
    }
  return before;
}
