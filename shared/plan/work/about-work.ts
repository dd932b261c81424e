import { addDays, datesFrom, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Moved } from '../../explain/moved.js';
import type { Quantity } from '../../explain/quantity.js';
import type { Person } from '../../farm/farm.js';
import { formatDate, type DateReader } from '../../units/dates.js';
import type { JobOutlook } from './work-outlook.js';
import type { WorkPlan, WorkWeek } from './work-plan.js';
import { hoursOn, workPeople } from './work-people.js';
import type { WorkRequest } from './work-request.js';

/** Who gives hours to a week of a plan. */
export type WhoWorks = Pick<WorkRequest, 'people' | 'handovers' | 'tables'> &
  Pick<WorkPlan, 'today' | 'to'>;

const DAYS = 7;

/**
 * What moves the hours available in a week most: the one who gives most of them is away.
 *
 * @param hours the number that was opened
 * @returns undefined where nobody has hours in it
 */
export function hoursMovedMost(
  { from }: Pick<WorkWeek, 'from'>,
  who: WhoWorks,
  hours: Quantity,
): Moved | undefined {
  const { people, handovers, today, to } = who;
  const first = from < today ? today : from;
  const end = addDays(from, DAYS - 1);
  const dates = datesFrom(first, daysBetween(first, end < to ? end : to) + 1);
  const shares = workPeople(people, handovers).map((person) => ({
    name: person.name,
    hours: dates.reduce((sum, date) => sum + hoursOn(person, date, who), 0),
  }));
  const [most] = shares.sort((a, b) => b.hours - a.hours);
  if (!most || most.hours === 0) return undefined;
  const left = Math.max(0, Number(hours.value) - most.hours);
  return { what: `If ${most.name} is away that week`, to: { ...hours, value: left } };
}

/** When hours available are known better: once those say theirs whose hours are assumed. */
export function hoursKnownBetter(people: readonly Person[]): string | undefined {
  const silent = people.filter(
    ({ hoursByWeekday, assumed = [] }) =>
      hoursByWeekday === undefined || assumed.includes('hoursByWeekday'),
  );
  if (silent.length === 0) return undefined;
  const names = silent.map(({ name }) => name).join(', ');
  return `When the hours of ${names} are typed under Your place: so far they are assumed.`;
}

/** A start-by day, were the work longer than it is planned. */
export const startMovedMost = (
  { startByIfLonger }: JobOutlook,
  startBy: Quantity,
): Moved | undefined =>
  startByIfLonger === undefined || startByIfLonger === startBy.value
    ? undefined
    : { what: 'If it takes a quarter longer', to: { ...startBy, value: startByIfLonger } };

/** Days that a forecast reaches ahead. */
const FORECAST_DAYS = 7;

/** When a start-by day is known better: by the forecast where weather decides, else by logged hours. */
export function startKnownBetter(
  { key, suitableDays, startBySafe }: JobOutlook,
  today: PlainDate,
  reader: DateReader,
): string | undefined {
  if (suitableDays && startBySafe !== undefined) {
    const from = addDays(startBySafe, -FORECAST_DAYS);
    return from <= today
      ? 'The forecast reaches that far now.'
      : `The forecast, from ${formatDate(from, reader)}.`;
  }
  // Hours of an own job are the household’s already.
  return key.startsWith('own/')
    ? undefined
    : 'When you have logged what such work takes: your own hours then count.';
}
