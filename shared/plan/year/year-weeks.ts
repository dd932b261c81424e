import { addDays, daysBetween, weekdayOf, type PlainDate } from '../../calendar/plain-date.js';
import { workNeeds } from '../work/work-needs.js';
import { hoursOn, workPeople } from '../work/work-people.js';
import type { PlannedJob } from '../work/work-plan.js';
import type { WorkRequest } from '../work/work-request.js';
import type { YearSpan } from './year-span.js';

/** A week from its Monday on; what of it is past is not counted. */
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
  planned: readonly PlannedJob[],
  span: YearSpan,
): YearWeek[] {
  const { today } = request;
  const days = daysBetween(today, span.until);
  const { needs, chores } = workNeeds(request, days);
  const people = workPeople(request.people, request.handovers);
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
    chores.reduce(
      (all, { fromDay, toDay, hoursPerDay }) =>
        fromDay <= day && day <= toDay ? all + hoursPerDay : all,
      0,
    );
  const given = (day: number): number =>
    people.reduce((all, person) => all + hoursOn(person, addDays(today, day), request), 0);
  return mondays(today, days).map(({ monday, ...within }): YearWeek => {
    const [hours, chore, other] = [given, choreHours, (day: number) => work[day]!].map((of) =>
      sum(of, within),
    ) as [number, number, number];
    return {
      from: monday,
      hoursAvailable: hours,
      choreHours: chore,
      workHours: other,
      isShort: hours < chore + other,
    };
  });
}

/** Weeks by their Monday, and the days of each that are still to come, in days from today. */
function mondays(
  today: PlainDate,
  days: number,
): { monday: PlainDate; from: number; to: number }[] {
  const first = 1 - weekdayOf(today);
  return Array.from({ length: Math.ceil((days - first) / 7) }, (_, week) => {
    const monday = first + 7 * week;
    return {
      monday: addDays(today, monday),
      from: Math.max(0, monday),
      to: Math.min(days, monday + 7),
    };
  });
}
