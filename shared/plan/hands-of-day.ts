import { dayLengthH } from '../calendar/day-length.js';
import { sunHours } from '../calendar/clock-offset.js';
import { dayOfYear, weekdayOf, type PlainDate } from '../calendar/plain-date.js';
import type { Person } from '../farm/farm.js';
import { isAtHome } from '../farm/who-is-there.js';
import { choreHoursOn } from './chore-hours.js';
import type { PlanContext } from './context.js';
import { homeOn, type HoursAtHome } from './out-by-day.js';
import { hoursOfDay, mostThroughStations, workOfDay } from './processing-work.js';

/** What people can do at home on one day. */
export interface DayOfHands {
  readonly date: PlainDate;
  /** Hour of the clock at which they begin. */
  readonly beginsH: number;
  readonly hands: number;
  /** Hours of each of them, in daylight. */
  readonly handsH: readonly number[];
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
  /** Birds they can process on a long day: with nobody at it longer than is judged bearable. */
  readonly mostLong: number;
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
 * off first; helpers, on the weekday they come, are added. All begin together: in the morning, or
 * where no bird would be done then, when those who are out by day are home.
 */
export function handsOn(context: AroundHands, date: PlainDate): DayOfHands {
  const { people, tables } = context;
  const morningH = tables.judgements.birds.processingStartH.value;
  const free = people.map((person) => freeOn(context, person, date));
  const starts = free.flatMap(({ spans }) => (spans ?? []).map(({ fromH }) => fromH));
  const from = (beginsH: number): DayOfHands => handsFrom(context, date, { beginsH, free });
  const morning = from(morningH);
  if (0 < morning.most) return morning;
  return [...new Set(starts)]
    .map(from)
    .reduce((best, way) => (isMore(way, best) ? way : best), morning);
}

const isMore = (a: DayOfHands, b: DayOfHands): boolean =>
  a.most === b.most ? b.hours + EQUAL_H < a.hours : b.most < a.most;

const EQUAL_H = 1e-9;

function handsFrom(
  context: AroundHands,
  date: PlainDate,
  { beginsH, free }: { beginsH: number; free: readonly Free[] },
): DayOfHands {
  const { batch, people, tables } = context;
  const { handHours, handsUnknown } = tables.judgements.birds;
  const lit = litHours(context, date, beginsH);
  const there = free
    .map((each) => ({ ...each, hours: hoursFrom(each, beginsH) }))
    .filter(({ hours }) => 0 < hours);
  const own =
    people.length === 0
      ? Array.from({ length: handsUnknown.value }, () => handHours.value)
      : there.map(({ hours }) => hours);
  const helpers = comesOn(batch, date) ? (batch.processingHelpers ?? 0) : 0;
  // Nobody helps longer than one of the household is there.
  const ofHelpers = Array.from({ length: helpers }, () =>
    Math.min(handHours.value, Math.max(0, ...own)),
  );
  const each = [...own, ...ofHelpers].map(lit);
  const ownHours = own.reduce((all, h) => all + lit(h), 0);
  const chores = people.length === 0 ? 0 : Math.min(ownHours, choreHoursOn(context, date));
  const hours = each.reduce((all, h) => all + h, 0) - chores;
  const mostIn = (handsH: readonly number[]): number =>
    Math.min(
      mostOf(context, handsH, chores),
      mostByEvening(context, date, { beginsH, hands: handsH.length }),
    );
  // Who is out by day has no longer day than the hours at home.
  const isFree = there.every(({ spans }) => spans === undefined);
  const longH = lit(tables.judgements.birds.longDayH.value);
  const most = mostIn(each);
  return {
    date,
    beginsH,
    hands: each.length,
    handsH: each,
    hours,
    chores,
    helpers,
    helperHours: ofHelpers.reduce((all, h) => all + lit(h), 0),
    names: there.map(({ name }) => name),
    most,
    mostLong: isFree ? Math.max(most, mostIn(each.map((h) => Math.max(h, longH)))) : most,
  };
}

/** Birds that hands can do in their hours, through the stations there are. */
function mostOf(context: AroundHands, handsH: readonly number[], chores: number): number {
  const { fixedH, birdH } = workOfDay(context);
  const most = Math.min(
    (handsH.reduce((all, h) => all + h, 0) - chores - fixedH) / birdH,
    mostThroughStations(context, handsH.length, Math.max(0, ...handsH)),
  );
  return Math.max(0, Math.floor(most + 1e-9));
}

/**
 * Birds that the hands of a day can do with so many hours more for each: for nobody past a long day in
 * daylight, where that is to be bearable.
 */
export function handsAsLong(
  context: AroundHands,
  { date, beginsH, handsH, chores }: DayOfHands,
  { moreH, isBearable }: { readonly moreH: number; readonly isBearable: boolean },
): number {
  const lit = litHours(context, date, beginsH);
  const capH = isBearable ? lit(context.tables.judgements.birds.longDayH.value) : Infinity;
  return mostOf(
    context,
    handsH.map((h) => Math.max(h, Math.min(h + moreH, capH))),
    chores,
  );
}

/** Birds of an evening that are done, all together, by its end or by dark. */
function mostByEvening(
  context: AroundHands,
  date: PlainDate,
  { beginsH, hands }: { beginsH: number; hands: number },
): number {
  const { farm, tables } = context;
  const { processingEndH, processingStartH } = tables.judgements.birds;
  if (hands === 0 || beginsH === processingStartH.value) return Infinity;
  const untilH = Math.min(processingEndH.value, sunHours(date, farm).setH);
  const [none, one] = [0, 1].map((birds) => hoursOfDay(context, hands, birds));
  return Math.max(0, Math.floor((untilH - beginsH - none!) / (one! - none!) + 1e-9));
}

/** What of some hours is in daylight: those of a morning are as long as the day at most. */
function litHours(
  { farm, tables }: AroundHands,
  date: PlainDate,
  beginsH: number,
): (hours: number) => number {
  if (beginsH === tables.judgements.birds.processingStartH.value) {
    const daylight = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(date) });
    return (h) => Math.min(h, daylight);
  }
  const { riseH, setH } = sunHours(date, farm);
  return (h) => Math.max(0, Math.min(beginsH + h, setH) - Math.max(beginsH, riseH));
}

/** When one of the household has hours on a day. */
interface Free {
  readonly name: string;
  readonly hours: number;
  /** By the clock, of who is out by day; left out for who is there all day and can begin at any time. */
  readonly spans?: readonly HoursAtHome[];
}

function freeOn(context: AroundHands, person: Person, date: PlainDate): Free {
  const { name } = person;
  const hours = hoursOf(context, person, date);
  const spans = hours <= 0 ? undefined : homeOn(person, date, hours, context.tables);
  return { name, hours, ...(spans ? { spans } : {}) };
}

/** Hours that somebody has in one go from an hour on. */
function hoursFrom({ hours, spans }: Free, beginsH: number): number {
  if (!spans) return hours;
  const now = spans.find(({ fromH, toH }) => fromH <= beginsH && beginsH < toH);
  return now ? now.toH - beginsH : 0;
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
