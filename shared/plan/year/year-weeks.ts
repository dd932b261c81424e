import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { weekStartOf } from '../../calendar/week-start.js';
import { comesOn } from '../work/chore-days.js';
import { workNeeds } from '../work/work-needs.js';
import { hoursOn, workPeople } from '../work/work-people.js';
import type { WorkPlan } from '../work/work-plan.js';
import type { WorkRequest } from '../work/work-request.js';
import type { YearSpan } from './year-span.js';

/** A week as the country counts it; what of it is past is not counted. */
export interface YearWeek {
  readonly from: PlainDate;
  /** Hours people give. */
  readonly hoursAvailable: number;
  /** Hours that chores take, and all other work. */
  readonly choreHours: number;
  readonly workHours: number;
  /** More is wanted than there is. */
  readonly isShort: boolean;
}

/**
 * Hours wanted against hours available, week by week to the end of the strip.
 *
 * Work counts on the days the plan of the work puts it; what has no place there, or lies further
 * ahead than that plan goes, on the day it is due, at the earliest today.
 */
export function yearWeeks(
  request: WorkRequest,
  { jobs: planned, weeks }: Pick<WorkPlan, 'jobs' | 'weeks'>,
  span: YearSpan,
): YearWeek[] {
  const { today } = request;
  const days = daysBetween(today, span.until);
  const { needs, chores } = workNeeds(request, days);
  const grownUps = workPeople(request.people, request.handovers).filter(({ isChild }) => !isChild);
  // A week with more work due than hours is short, though some of it is done before.
  const short = new Set(weeks.flatMap(({ from, isOverloaded }) => (isOverloaded ? [from] : [])));
  const byKey = new Map(planned.map((job) => [job.key, job]));
  const work = new Float64Array(days);
  const add = (day: number, hours: number): void => {
    if (0 <= day && day < days) work[day]! += hours;
  };
  for (const need of needs) {
    const pieces = byKey.get(need.key)?.pieces ?? [];
    for (const { date, hours, personIds } of pieces)
      add(daysBetween(today, date), hours * personIds.length);
    if (pieces.length === 0)
      add(Math.max(0, need.dueDay), need.hours * (need.conditions.peopleNeeded ?? 1));
  }
  const sum = (of: (day: number) => number, { from, to }: { from: number; to: number }): number => {
    let hours = 0;
    for (let day = from; day < to; day++) hours += of(day);
    return Math.round(hours * 10) / 10;
  };
  const choreHours = (day: number): number =>
    chores.reduce((all, chore) => (comesOn(chore, day) ? all + chore.hoursPerDay : all), 0);
  const given = (day: number): number =>
    grownUps.reduce((all, person) => all + hoursOn(person, addDays(today, day), request), 0);
  return weeksAhead(request, days).map(({ first, ...within }): YearWeek => {
    const [hours, chore, other] = [given, choreHours, (day: number) => work[day]!].map((of) =>
      sum(of, within),
    ) as [number, number, number];
    return {
      from: first,
      hoursAvailable: hours,
      choreHours: chore,
      workHours: other,
      isShort: hours < chore + other || short.has(first),
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
