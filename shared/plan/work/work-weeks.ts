import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { weekStartOf } from '../../calendar/week-start.js';
import type { WorkWeek } from './planned-work.js';
import type { WholeWork } from './whole-work.js';
import type { WorkHours } from './work-hours.js';
import type { WorkRequest } from './work-request.js';

/** Hours given, taken and due, week by week as the country counts its weeks. */
export function weeksOf(
  { today, people, farm }: WorkRequest,
  { problem, fitted }: WholeWork,
  windows: readonly { readonly latestDay: number }[],
  { given, choreDays }: WorkHours,
): WorkWeek[] {
  const first = weekStartOf(today, farm);
  const gone = daysBetween(first, today);
  const weekOf = (day: number): number => Math.floor((gone + day) / 7);
  const weeks = weekOf(problem.days - 1) + 1;
  const sums = Array.from({ length: weeks }, () => ({ given: 0, chores: 0, planned: 0, due: 0 }));
  given
    .filter((_, w) => isGrownUp(people[w]!))
    .forEach((minutes) => minutes.forEach((m, day) => (sums[weekOf(day)]!.given += m)));
  choreDays.forEach((list, day) =>
    list.forEach(({ minutes, person, shortMinutes }) => {
      const sum = sums[weekOf(day)]!;
      sum.chores += minutes;
      // Of a child or a neighbor the hours count that a chore is done in.
      if (person !== undefined && !isGrownUp(people[person]!)) sum.given += minutes - shortMinutes;
    }),
  );
  problem.jobs.forEach((job, i) => {
    const latest = Math.max(0, windows[i]!.latestDay);
    if (latest < problem.days) sums[weekOf(latest)]!.due += job.minutes * job.peopleNeeded;
    for (const piece of fitted.plan[i]!)
      sums[weekOf(piece.day)]!.planned += piece.minutes * job.peopleNeeded;
  });
  return sums.map((sum, week) => ({
    from: addDays(first, 7 * week),
    hours: sum.given / 60,
    choreHours: sum.chores / 60,
    plannedHours: sum.planned / 60,
    dueHours: sum.due / 60,
    isOverloaded: sum.given < sum.chores + sum.due,
  }));
}
