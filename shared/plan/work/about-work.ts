import { addDays, datesFrom, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { AboutNumbers, Moved } from '../../explain/moved.js';
import type { Quantity } from '../../explain/quantity.js';
import type { Person } from '../../farm/farm.js';
import { openThingOf } from '../open/open-things.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import type { JobOutlook } from './job-outlook.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';
import { hoursOn, workPeople } from './work-people.js';
import { HOURS_OF } from './work-quantities.js';
import type { WorkRequest } from './work-request.js';

/** Who gives hours to a week of a plan. */
export type WhoWorks = Pick<WorkRequest, 'people' | 'handovers' | 'tables'>;

type Planned = Pick<WorkPlan, 'today' | 'to' | 'jobs'>;

const DAYS = 7;
/** By so much work easily takes longer than it is planned with. */
const LONGER = 1.25;

/** What is asked of the hours of weeks, as `weekQuantities` makes them. */
export const aboutWeeks = (plan: Planned, who: WhoWorks): AboutNumbers => ({
  *movedMost(quantity): Generator<undefined, Moved | undefined> {
    yield undefined;
    const from = quantity.inputs[0]?.value;
    if (typeof from !== 'string') return openThingOf(quantity);
    return hoursMovedMost(plan, who, from, quantity) ?? openThingOf(quantity);
  },
});

/** @param from first day of the week */
function hoursMovedMost(
  plan: Planned,
  who: WhoWorks,
  from: PlainDate,
  hours: Quantity,
): Moved | undefined {
  const end = addDays(from, DAYS - 1);
  const isInWeek = (date: PlainDate): boolean => from <= date && date <= end;
  switch (hours.label) {
    case HOURS_OF.given:
      return availableMovedMost(plan, who, from, hours);
    case HOURS_OF.planned:
      return longerWork(hours, plan.jobs, ({ pieces, peopleNeeded }) =>
        pieces
          .filter(({ date }) => isInWeek(date))
          .reduce((sum, piece) => sum + piece.hours * peopleNeeded, 0),
      );
    case HOURS_OF.due:
      return longerWork(hours, plan.jobs, (job) =>
        isInWeek(job.latest < plan.today ? plan.today : job.latest)
          ? job.hours * job.peopleNeeded
          : 0,
      );
    default:
      return undefined;
  }
}

/** Hours available hang most on whoever gives most of them: undefined where nobody has any. */
function availableMovedMost(
  { today, to }: Planned,
  who: WhoWorks,
  from: PlainDate,
  hours: Quantity,
): Moved | undefined {
  const first = from < today ? today : from;
  const end = addDays(from, DAYS - 1);
  const dates = datesFrom(first, daysBetween(first, end < to ? end : to) + 1);
  const shares = workPeople(who.people, who.handovers).map((person) => ({
    name: person.name,
    hours: dates.reduce((sum, date) => sum + hoursOn(person, date, who), 0),
  }));
  const [most] = shares.sort((a, b) => b.hours - a.hours);
  if (!most || most.hours === 0) return undefined;
  const left = Math.max(0, Number(hours.value) - most.hours);
  return {
    what: `If ${most.name} is away that week`,
    to: { ...hours, value: left },
    knownBetter: hoursKnownBetter(who.people),
  };
}

/** Hours of work hang most on the piece that is most of them: undefined where there is none. */
function longerWork(
  hours: Quantity,
  jobs: readonly PlannedJob[],
  hoursOf: (job: PlannedJob) => number,
): Moved | undefined {
  const shares = jobs.map((job) => ({ job, share: hoursOf(job) }));
  const [most] = shares.sort((a, b) => b.share - a.share);
  if (!most || most.share === 0) return undefined;
  const value = Number(hours.value) + (LONGER - 1) * most.share;
  return {
    what: `If “${most.job.name}” takes a quarter longer`,
    to: { ...hours, value },
    knownBetter: workKnownBetter(most.job.key),
  };
}

/** When hours available are known better: once those say theirs whose hours are assumed. */
function hoursKnownBetter(people: readonly Person[]): string {
  const silent = people.filter(
    ({ hoursByWeekday, assumed = [] }) =>
      hoursByWeekday === undefined || assumed.includes('hoursByWeekday'),
  );
  const names = silent.map(({ name }) => name).join(', ');
  return silent.length === 0
    ? 'When you type who is away, under Your place.'
    : `When the hours of ${names} are typed under Your place: so far they are assumed.`;
}

/** Hours of an own job are the household’s already; those of animals are learned from the log. */
const workKnownBetter = (key: string): string =>
  key.startsWith('own/')
    ? 'When you have begun it, and type the hours it took so far.'
    : 'When you have logged what such work takes: your own hours then count.';

/** Days that a forecast reaches ahead. */
const FORECAST_DAYS = 7;

/** What is asked of the chance of a piece of work and of its start-by day. */
export const aboutChances = (
  job: JobOutlook,
  today: PlainDate,
  reader: DateReader,
): AboutNumbers => ({
  *movedMost(quantity): Generator<undefined, Moved | undefined> {
    yield undefined;
    const { startByIfLonger, suitableDays, windowDays } = job;
    const isMoved =
      quantity.unit === 'date' &&
      startByIfLonger !== undefined &&
      startByIfLonger !== quantity.value;
    if (isMoved)
      return {
        what: 'If it takes a quarter longer',
        to: { ...quantity, value: startByIfLonger },
        knownBetter: chanceKnownBetter(job, today, reader),
      };
    return {
      what: suitableDays
        ? `The weather: in years like the worst tenth ${suitableDays.tenth} of its ${windowDays} days suit it, in the best ${suitableDays.ninetieth}`
        : 'How long it takes, and what has to be done before it',
      knownBetter: chanceKnownBetter(job, today, reader),
    };
  },
});

/** By the forecast where weather decides, else by logged hours. */
function chanceKnownBetter(
  { key, suitableDays, startBySafe }: JobOutlook,
  today: PlainDate,
  reader: DateReader,
): string {
  if (!suitableDays || startBySafe === undefined) return workKnownBetter(key);
  const from = addDays(startBySafe, -FORECAST_DAYS);
  return from <= today
    ? 'The forecast reaches that far now.'
    : `The forecast, from ${formatDate(from, reader)}.`;
}
