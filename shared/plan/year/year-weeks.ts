import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { weekStartOf } from '../../calendar/week-start.js';
import { comesOn } from '../work/chore-days.js';
import { isGoneBy } from '../work/gone-by.js';
import { tenth, unfitJobs, type OverWeek } from '../work/full-weeks.js';
import { workNeeds } from '../work/work-needs.js';
import { hoursOn, workPeople } from '../work/work-people.js';
import type { WorkPlan } from '../work/planned-work.js';
import type { WorkRequest } from '../work/work-request.js';
import type { YearSpan } from './year-span.js';

/** A week as the country counts it; what of it is past is not counted. */
export interface YearWeek extends OverWeek {
  readonly from: PlainDate;
  /** Hours people give. */
  readonly hoursAvailable: number;
  /** Hours that chores take, and all other work. */
  readonly choreHours: number;
  readonly workHours: number;
}

/** All hours that a week asks for. */
export const wanted = ({
  choreHours,
  workHours,
}: Pick<YearWeek, 'choreHours' | 'workHours'>): number => tenth(choreHours + workHours);

/**
 * Hours wanted against hours available, week by week to the end of the strip.
 *
 * Work counts on the days the plan of the work puts it; what has no place there, or lies further
 * ahead than that plan goes, on the day it is due, at the earliest today. What can be done no more takes
 * no hours.
 */
export function yearWeeks(
  request: WorkRequest,
  { jobs: planned, chores: choreDays, shortDays }: Pick<WorkPlan, 'jobs' | 'chores' | 'shortDays'>,
  span: YearSpan,
): YearWeek[] {
  const { today } = request;
  const days = daysBetween(today, span.until);
  const { needs, chores } = workNeeds(request, days);
  const grownUps = workPeople(request.people, request.handovers).filter(isGrownUp);
  const byKey = new Map(planned.map((job) => [job.key, job]));
  const work = new Float64Array(days);
  const unfit = unfitJobs({ jobs: planned, shortDays, today });
  const add = (day: number, hours: number): void => {
    if (0 <= day && day < days) work[day]! += hours;
  };
  for (const need of needs) {
    const job = byKey.get(need.key);
    if (job && isGoneBy(job)) continue;
    const pieces = job?.pieces ?? [];
    for (const { date, hours, personIds } of pieces)
      add(daysBetween(today, date), hours * personIds.length);
    const dueDay = Math.max(0, need.dueDay);
    const people = need.conditions.peopleNeeded ?? 1;
    add(dueDay, people * (pieces.length === 0 ? need.hours : (job?.lostHours ?? 0)));
  }
  const sum = (of: (day: number) => number, { from, to }: { from: number; to: number }): number => {
    let hours = 0;
    for (let day = from; day < to; day++) hours += of(day);
    return tenth(hours);
  };
  const choreHours = (day: number): number =>
    chores.reduce((all, chore) => (comesOn(chore, day) ? all + chore.hoursPerDay : all), 0);
  const areCounted = new Set(grownUps.map(({ id }) => id));
  // Of a child or a neighbor the hours count that a chore is done in.
  const byChildren = (day: number): number =>
    (choreDays[day] ?? []).reduce(
      (all, { personId = '', hours, shortHours }) =>
        personId === '' || areCounted.has(personId) ? all : all + hours - shortHours,
      0,
    );
  const given = (day: number): number =>
    grownUps.reduce(
      (all, person) => all + hoursOn(person, addDays(today, day), request),
      byChildren(day),
    );
  return weeksAhead(request, days).map(({ first, ...within }): YearWeek => {
    const [hours, chore, other] = [given, choreHours, (day: number) => work[day]!].map((of) =>
      sum(of, within),
    ) as [number, number, number];
    return {
      from: first,
      hoursAvailable: hours,
      choreHours: chore,
      workHours: other,
      isShort: hours < wanted({ choreHours: chore, workHours: other }),
      unfitJobs: unfit.filter(({ on }) => {
        const day = daysBetween(today, on);
        return within.from <= day && day < within.to;
      }),
      unfitChoreDays: choreDays
        .slice(within.from, within.to)
        .filter((list) => list.some(({ shortHours }) => 0 < shortHours)).length,
    };
  });
}

/** Weeks, and the days of each that are still to come, in days from today. */
function weeksAhead(
  { today, farm }: WorkRequest,
  days: number,
): { first: PlainDate; from: number; to: number }[] {
  const start = daysBetween(today, weekStartOf(today, farm));
  return Array.from({ length: Math.ceil((days - start) / 7) }, (_, week) => {
    const first = start + 7 * week;
    return {
      first: addDays(today, first),
      from: Math.max(0, first),
      to: Math.min(days, first + 7),
    };
  });
}
