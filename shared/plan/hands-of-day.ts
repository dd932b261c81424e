import { dayLengthH } from '../calendar/day-length.js';
import { dayOfYear, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Person } from '../farm/farm.js';
import { isAtHome } from '../farm/who-is-there.js';
import { choreHoursOn } from './chore-hours.js';
import type { PlanContext } from './context.js';
import { outOn } from './out-by-day.js';
import { mostThroughStations, workOfDay } from './processing-work.js';

/** What people can do at home on one day. */
export interface DayOfHands {
  readonly date: PlainDate;
  readonly hands: number;
  /** Hours of all of them, in daylight, when the chores of the day are done. */
  readonly hours: number;
  /** Hours of those chores. */
  readonly chores: number;
  /** Of the hands, those who come to help. */
  readonly helpers: number;
  /** Hours of theirs, in those of all. */
  readonly helperHours: number;
  /** Who of the household has hours. */
  readonly names: readonly string[];
  /** Birds they can process in those hours. */
  readonly most: number;
}

/** Whether the household has said nothing of who processes. */
export const areHandsUnknown = ({
  people,
  batch,
}: Pick<PlanContext, 'people' | 'batch'>): boolean =>
  people.length === 0 && batch.processingHelpers === undefined;

type AroundHands = Pick<
  PlanContext,
  'batch' | 'people' | 'farm' | 'tables' | 'handovers' | 'choresOfOthers'
>;

/**
 * Who has hours on a day, by their weekdays, days away and the daylight. Chores of the day are taken
 * off first; helpers, on the weekday they come, are added.
 */
export function handsOn(context: AroundHands, date: PlainDate): DayOfHands {
  const { batch, people, farm, tables } = context;
  const { handHours, handsUnknown } = tables.judgements.birds;
  const daylight = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(date) });
  const there = togetherOn(
    people
      .map((person) => ({ person, name: person.name, hours: hoursOf(context, person, date) }))
      .filter(({ hours }) => 0 < hours),
    date,
    tables,
  );
  const own =
    people.length === 0
      ? Array.from({ length: handsUnknown.value }, () => handHours.value)
      : there.map(({ hours }) => hours);
  const helpers = comesOn(batch, date) ? (batch.processingHelpers ?? 0) : 0;
  // Nobody helps longer than one of the household is there.
  const ofHelpers = Array.from({ length: helpers }, () =>
    Math.min(handHours.value, Math.max(0, ...own)),
  );
  const each = [...own, ...ofHelpers].map((h) => Math.min(h, daylight));
  const ownHours = own.reduce((all, h) => all + Math.min(h, daylight), 0);
  const chores = people.length === 0 ? 0 : Math.min(ownHours, choreHoursOn(context, date));
  const hours = each.reduce((all, h) => all + h, 0) - chores;
  const { fixedH, birdH } = workOfDay(context);
  const most = Math.min(
    (hours - fixedH) / birdH,
    mostThroughStations(context, each.length, Math.max(0, ...each)),
  );
  return {
    date,
    hands: each.length,
    hours,
    chores,
    helpers,
    helperHours: ofHelpers.reduce((all, h) => all + Math.min(h, daylight), 0),
    names: there.map(({ name }) => name),
    most: Math.max(0, Math.floor(most + 1e-9)),
  };
}

/**
 * Those who can be at it at the same time: who is out by day comes home when those in the house have
 * killed and plucked. Where all are out they begin together once they are home.
 */
function togetherOn<T extends { readonly person: Person }>(
  people: readonly T[],
  date: PlainDate,
  tables: AroundHands['tables'],
): readonly T[] {
  const inHouse = people.filter(({ person }) => outOn(person, date, tables) === undefined);
  return inHouse.length === 0 ? people : inHouse;
}

const comesOn = (
  { helpersWeekday }: Pick<PlanContext['batch'], 'helpersWeekday'>,
  date: PlainDate,
): boolean => helpersWeekday === undefined || helpersWeekday === weekdayOf(date);

/** Hours of one of the household, none on days away or handed over. */
function hoursOf({ tables, handovers = [] }: AroundHands, person: Person, date: PlainDate): number {
  if (!isAtHome(person, date, handovers)) return 0;
  return person.hoursByWeekday?.[weekdayOf(date) - 1] ?? tables.judgements.birds.handHours.value;
}
