import { addDays, dayOfYear, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { Farm } from '../../farm/farm.js';
import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';
import type { JobSet, SetJob } from '../../tables/job-sets.js';
import type { Climate } from '../../weather/climate.js';

export const jobSetFormulas = {
  hours: {
    id: 'hours-of-set',
    title: 'Hours of a set of jobs',
    words:
      'A base plus an amount for each of the count, over the jobs of the set, for everyone who takes part.',
    symbols: 'H = Σ (b + v·n)·people',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** The turn-out a set waits for: its herds must not come before the work is done. */
export const turnOutOf = (
  { suggest }: JobSet,
  events: readonly KeyDate[],
  today: PlainDate,
): KeyDate | undefined =>
  suggest?.from === 'turn-out'
    ? events
        .filter(({ id, date }) => id.endsWith('/turn-out') && today <= date)
        .sort((a, b) => (a.date < b.date ? -1 : 1))[0]
    : undefined;

/**
 * The date a set is hung on unless the user says otherwise: the next one from today on, or the one
 * just past while most of the set's work still lies ahead.
 */
export function suggestedAnchor(
  set: JobSet,
  { farm, climate, today }: { farm: Farm; climate: Climate; today: PlainDate },
): PlainDate {
  const dateIn = (year: number): PlainDate => {
    const { anchor, suggest } = set;
    const frost = anchor === 'first-frost' ? farm.firstFrost : farm.lastFrost;
    if (suggest?.from === 'warm-days') return addDays(`${year}-01-01`, warmDay(climate, suggest));
    return addDays(
      `${year}-${frost}`,
      suggest?.from === 'last-frost' ? (suggest.offsetDays ?? 0) : 0,
    );
  };
  const lastDue = Math.max(...set.jobs.map(({ dueOffsetDays }) => dueOffsetDays));
  const first = [0, 1, 2].map((k) => dateIn(yearOf(today) + k));
  return first.find((date) => today <= addDays(date, Math.floor(lastDue / 2))) ?? first[1]!;
}

/** Days from 1 January to the first of some average days in a row that are warm enough. */
function warmDay(
  { meanMaxC }: Climate,
  { dayMaxC, daysInRow }: { dayMaxC: number; daysInRow: number },
): number {
  const day = meanMaxC.findIndex((_, i) =>
    Array.from({ length: daysInRow }, (_each, k) => meanMaxC[(i + k) % meanMaxC.length]!).every(
      (c) => dayMaxC <= c,
    ),
  );
  return day < 0 ? dayOfYear('2023-05-01') - 1 : day;
}

/** Hours of the jobs of a set in all, opened to what they rest on. */
export const hoursOfSet = (
  set: JobSet,
  jobs: readonly OwnJob[],
  { count, unit }: { readonly count: number; readonly unit: string },
): NumberQuantity =>
  quantity(
    `Hours of “${set.name}”`,
    jobs.reduce((sum, { hours, conditions }) => sum + hours * (conditions.peopleNeeded ?? 1), 0),
    'h',
    jobSetFormulas.hours,
    [input(`How many, ${unit}`, count, 'ratio', 'n'), input('Jobs', jobs.length, 'count')],
    { rows: [set] },
  );

/**
 * The jobs of a set on dates and in hours, those of which the last day is past left out and none
 * beginning before today. Their ids
 * and `waitsForId` are those within the set. Tied to an event, they move along with it.
 *
 * Hours: base plus an amount for each of the count; of each person where two work at once.
 */
export function jobsOfSet(
  set: JobSet,
  {
    anchorOn,
    count,
    eventId,
    today,
  }: { anchorOn: PlainDate; count: number; eventId?: string; today: PlainDate },
): OwnJob[] {
  const jobs = set.jobs
    .flatMap((job) =>
      Array.from({ length: job.times ?? 1 }, (_, k) => dated(set, job, { anchorOn, count, k })),
    )
    .map((job) => (eventId === undefined ? job : { ...job, tiedTo: { eventId, on: anchorOn } }));
  const open = jobs.filter((job) => today <= (job.noUseAfter ?? job.dueOn));
  const ids = new Set(open.map(({ id }) => id));
  return open.map((job) => {
    const notBefore = job.notBefore! < today ? today : job.notBefore!;
    if (job.waitsForId === undefined || ids.has(job.waitsForId)) return { ...job, notBefore };
    // What it waits for is past, so that it waits for nothing.
    const { waitsForId: _gone, waitDays: _days, ...free } = job;
    return { ...free, notBefore };
  });
}

function dated(
  set: JobSet,
  job: SetJob,
  { anchorOn, count, k }: { anchorOn: PlainDate; count: number; k: number },
): OwnJob {
  const on = (offset: number): PlainDate => addDays(anchorOn, offset + k * (job.everyDays ?? 0));
  const hours = job.hoursBase + job.hoursPerUnit * count;
  return {
    id: idOf(job.id, k),
    name: job.times === undefined ? job.name : `${job.name}, ${k + 1} of ${job.times}`,
    hours: Math.max(0.1, Math.round(hours * 100) / 100),
    notBefore: on(job.firstOffsetDays),
    dueOn: on(job.dueOffsetDays),
    ...(job.lastOffsetDays === undefined ? {} : { noUseAfter: on(job.lastOffsetDays) }),
    priority: job.priority,
    conditions: job.conditions,
    canBeSpread: job.canBeSpread,
    ...(job.waitsFor === undefined
      ? {}
      : { waitsForId: idOf(job.waitsFor, 0), waitDays: job.waitDays ?? 0 }),
    ifLate: job.ifLate,
    setId: set.id,
  };
}

const idOf = (id: string, k: number): string => (k === 0 ? id : `${id}-${k + 1}`);
