import { daysBetween } from '../../calendar/plain-date.js';
import { isRepeated } from '../../farm/repeated-jobs.js';
import type { WorkRequest } from './work-request.js';

/**
 * Days that a plan of the work covers: to the last date on which something is due that comes once,
 * and a year at least. What comes every day or again and again has no last date of its own.
 *
 * Range: from the horizon of the table to the most of it.
 */
export function workHorizonDays({ today, work, ownJobs, tables }: WorkRequest): number {
  const { value: least, mostDays } = tables.work.horizonDays;
  const due = [
    ...work.flatMap(({ tasks }) =>
      tasks
        .filter(({ isDaily, onDemand, isOver }) => !isDaily && !onDemand && !isOver)
        .map(({ end, spareDays, mayFollowDays = 0 }) => ({ end, more: spareDays + mayFollowDays })),
    ),
    ...ownJobs
      .filter((job) => !isRepeated(job))
      .map(({ dueOn, noUseAfter }) => ({ end: noUseAfter ?? dueOn, more: 0 })),
  ].map(({ end, more }) => daysBetween(today, end) + more);
  const last = due.reduce((most, day) => Math.max(most, day), 0);
  return Math.min(mostDays, Math.max(least, last + 1));
}
