import { datesFrom, weekdayOf } from '../../calendar/plain-date.js';
import { sunHours } from '../../calendar/clock-offset.js';
import type { Worker, WorkPiece } from '../../schedule/work.js';
import { comesOn } from './chore-days.js';
import type { SpentToday } from './needs-as-said.js';
import type { PlannedChore, WorkNeed } from './work-need.js';
import type { WorkNeeds } from './work-needs.js';
import { canDo, hoursOn, isAdultThere, isFor, outOn, type WorkPerson } from './work-people.js';
import type { WorkRequest } from './work-request.js';

/** A chore on a day, and who has the time for it. */
export interface ChoreDay {
  readonly key: string;
  readonly minutes: number;
  /** Left out when nobody there has the time. */
  readonly person?: number;
  /** What of it goes beyond the hours of that day. */
  readonly shortMinutes: number;
}

export interface WorkHours {
  /** What is left when chores are done. */
  readonly workers: readonly Worker[];
  /** All hours people give, chores included: minutes by day. */
  readonly given: readonly Int32Array[];
  readonly choreDays: readonly (readonly ChoreDay[])[];
  /** Work of one set day that animals depend on, by its key: it takes its hours next. */
  readonly onItsDay: ReadonlyMap<string, WorkOnItsDay>;
}

/** Work that is done on its day whatever else there is, and what of it nobody has hours for. */
export interface WorkOnItsDay {
  readonly piece: WorkPiece;
  /** Of each who takes part. */
  readonly shortMinutes: number;
}

/** People's minutes by day, those in daylight, and chores taken off first. */
export function workHours(
  request: WorkRequest,
  { chores, needs, spentToday }: Pick<WorkNeeds, 'chores' | 'needs' | 'spentToday'>,
  days: number,
): WorkHours {
  const { people, today, farm, tables } = request;
  const dates = datesFrom(today, days);
  const hasAdult = dates.map((date) => isAdultThere(people, date, request));
  const given = people.map((person) =>
    Int32Array.from(dates, (date, day) =>
      person.isChild && !hasAdult[day] ? 0 : Math.round(60 * hoursOn(person, date, request)),
    ),
  );
  const left = given.map((minutes) => minutes.slice());
  const kept = keptByChildren(needs, people, days);
  const isOut = (p: number, day: number): boolean =>
    outOn(people[p]!, dates[day]!, tables) !== undefined;
  // The longest first: what is short goes into the hours that they leave.
  const inTurn = chores
    .map((chore, at) => ({ chore, at, ...choreHands(chore, people) }))
    .sort((a, b) => b.chore.hoursPerDay - a.chore.hoursPerDay);
  const choreDays = Array.from({ length: days }, (_, day) => {
    const taken: (ChoreDay | undefined)[] = chores.map(() => undefined);
    for (const hands of inTurn)
      if (comesOn(hands.chore, day)) taken[hands.at] = takeChore(hands, { left, kept, isOut }, day);
    return taken.filter((each) => each !== undefined);
  });
  // What was done today took its hours: they are not given to other work once more. The round stays
  // with whom it was in the morning, so that no tick takes it to somebody who has other work today.
  for (const spent of spentToday) takeSpent(spent, people, left);
  const onItsDay = new Map<string, WorkOnItsDay>();
  for (const need of needs) {
    const found = isBoundToItsDay(need)
      ? takeItsDay(need, people, { given, left, isOut })
      : undefined;
    if (found) onItsDay.set(need.key, found);
  }
  const suns = dates.map((date) => sunHours(date, farm));
  const workers = left.map((minutes, w): Worker => {
    const { weekday, weekend } = people[w]!.startH ?? tables.work.startH;
    const lightMinutes = minutes.map((free, day) => {
      if (free === 0) return 0;
      const { riseH, setH } = suns[day]!;
      const startH = weekdayOf(dates[day]!) < 6 ? weekday : weekend;
      const lightH = Math.min(startH + free / 60, setH) - Math.max(startH, riseH);
      return Math.max(0, Math.min(free, Math.round(60 * lightH)));
    });
    return { minutes, lightMinutes, ...(people[w]!.isChild ? { helpsFirst: true } : {}) };
  });
  return { workers, given, choreDays, onItsDay };
}

/** Done on one set day because animals depend on it, and asking nothing of that day. */
function isBoundToItsDay(need: WorkNeed): boolean {
  const { priority, fromDay, untilDay, conditions, isBoundToADay } = need;
  if (isBoundToADay) return true;
  const { peopleNeeded: _people, ...asks } = conditions;
  const asksNothing = Object.values(asks).every((each) => each === undefined || each === false);
  return priority === 'must' && fromDay === untilDay && asksNothing;
}

/** Whether one of the people is out of the house by day. */
type IsOut = (person: number, day: number) => boolean;

/**
 * Those with most time left do it, beyond their hours if need be; whoever is away does not. What
 * comes again and again through the day is rather for those who are in the house.
 */
function takeItsDay(
  need: WorkNeed,
  people: readonly WorkPerson[],
  {
    given,
    left,
    isOut,
  }: { given: readonly Int32Array[]; left: readonly Int32Array[]; isOut: IsOut },
): WorkOnItsDay | undefined {
  const day = need.fromDay;
  const minutes = Math.max(1, Math.round(60 * need.hours));
  const count = need.conditions.peopleNeeded ?? 1;
  const workers = people
    .flatMap((person, w) => (canDo(person, need) && 0 < given[w]![day]! ? [w] : []))
    .sort(
      (a, b) =>
        (need.isThroughTheDay ? Number(isOut(a, day)) - Number(isOut(b, day)) : 0) ||
        left[b]![day]! - left[a]![day]!,
    )
    .slice(0, count);
  if (workers.length < count) return undefined;
  let shortMinutes = 0;
  for (const w of workers) {
    shortMinutes = Math.max(shortMinutes, minutes - left[w]![day]!);
    left[w]![day] = Math.max(0, left[w]![day]! - minutes);
  }
  return { piece: { day, minutes, workers: workers.sort((a, b) => a - b) }, shortMinutes };
}

/**
 * Hours of work that is done, of those whose work it was, then of those with most time: who did it
 * nobody says, and taken off another they would push out what is planned for that one today.
 */
function takeSpent(
  { hours, peopleNeeded, plannedFor = [], ...asked }: SpentToday,
  people: readonly WorkPerson[],
  left: readonly Int32Array[],
): void {
  const isPlanned = (w: number): number => Number(plannedFor.includes(people[w]!.id));
  const inTurn = people
    .flatMap((person, w) => (isFor(person, asked) ? [w] : []))
    .sort((a, b) => isPlanned(b) - isPlanned(a) || left[b]![0]! - left[a]![0]!);
  for (const w of inTurn.slice(0, peopleNeeded))
    left[w]![0] = Math.max(0, left[w]![0]! - Math.round(60 * hours));
}

/** Minutes of each child, by day, that its own jobs want on the day they are due. */
function keptByChildren(
  needs: readonly WorkNeed[],
  people: readonly WorkPerson[],
  days: number,
): (Int32Array | undefined)[] {
  const kept = people.map(({ isChild }) => (isChild ? new Int32Array(days) : undefined));
  for (const need of needs) {
    const able = people.flatMap((person, p) => (canDo(person, need) ? [p] : []));
    if (need.dueDay < 0 || days <= need.dueDay || !able.every((p) => people[p]!.isChild)) continue;
    for (const p of able) kept[p]![need.dueDay]! += Math.round(60 * need.hours);
  }
  return kept;
}

/**
 * A chore's minutes a day, and who can do it: children, whom it falls to where none can, and who
 * looks in where these have no time for all of it.
 */
interface ChoreHands {
  readonly chore: PlannedChore;
  readonly minutes: number;
  readonly children: readonly number[];
  readonly others: readonly number[];
  readonly neighbors: readonly number[];
}

function choreHands(chore: PlannedChore, people: readonly WorkPerson[]): Omit<ChoreHands, 'chore'> {
  const able = people.flatMap((each, p) => (isFor(each, chore) ? [p] : []));
  return {
    minutes: Math.round(60 * chore.hoursPerDay),
    children: able.filter((p) => people[p]!.isChild),
    others: able.filter((p) => !people[p]!.isChild || chore.personIds),
    neighbors: people.flatMap(({ looksIn }, p) => (looksIn === undefined ? [] : [p])),
  };
}

/**
 * A child takes what a child can do too where it has the time for all of it beside its own jobs of
 * the day; else who is in the house at noon, or has most time. Where these have too little, whoever
 * looks in does; where nobody has enough, it takes what there is.
 */
function takeChore(
  { chore: { key, rounds }, minutes, children, others, neighbors }: ChoreHands,
  {
    left,
    kept,
    isOut,
  }: {
    left: readonly Int32Array[];
    kept: readonly (Int32Array | undefined)[];
    isOut: IsOut;
  },
  day: number,
): ChoreDay {
  const has = (p: number): number => left[p]![day]!;
  const child = children.find((p) => minutes + (kept[p]?.[day] ?? 0) <= has(p));
  const most = (of: readonly number[]): number =>
    of.reduce((first, p) => (first < 0 || has(first) < has(p) ? p : first), -1);
  const inHouse = rounds?.includes('noon')
    ? most(others.filter((p) => minutes <= has(p) && !isOut(p, day)))
    : -1;
  const own = child ?? (0 <= inHouse ? inHouse : most(others));
  const isShort = (left[own]?.[day] ?? 0) < minutes;
  const neighbor = isShort ? most(neighbors) : -1;
  const person = 0 <= neighbor && (left[own]?.[day] ?? 0) < has(neighbor) ? neighbor : own;
  const had = left[person]?.[day] ?? 0;
  if (had === 0) return { key, minutes, shortMinutes: minutes };
  left[person]![day] = Math.max(0, had - minutes);
  return { key, minutes, person, shortMinutes: Math.max(0, minutes - had) };
}
