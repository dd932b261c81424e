import type { WorkPiece } from '../../schedule/work.js';
import { comesOn } from './chore-days.js';
import type { SpentToday } from './needs-as-said.js';
import type { PlannedChore, WorkNeed } from './work-need.js';
import { canDo, isFor, type WorkPerson } from './work-people.js';

/** A chore on a day, and who has the time for it. */
export interface ChoreDay {
  readonly key: string;
  readonly minutes: number;
  /** Left out when nobody there has the time. */
  readonly person?: number;
  /** What of it goes beyond the hours of that day. */
  readonly shortMinutes: number;
}

/** Work that is done on its day whatever else there is, and what of it nobody has hours for. */
export interface WorkOnItsDay {
  readonly piece: WorkPiece;
  /** Of each who takes part. */
  readonly shortMinutes: number;
}

/** Whether somebody is out of the house by day. */
export type IsOut = (person: WorkPerson, day: number) => boolean;

/** Minutes that two people, who have so many each, have at the same hours of a day. */
export type AtOnce = (
  one: { readonly person: WorkPerson; readonly minutes: number },
  other: { readonly person: WorkPerson; readonly minutes: number },
  day: number,
) => number;

/** Minutes of one person, by day. */
export interface MinutesByDay {
  [day: number]: number;
}

/** Whose hours a day’s chores and its own work take. */
export interface Hands {
  readonly people: readonly WorkPerson[];
  readonly chores: readonly PlannedChore[];
  readonly isOut: IsOut;
  readonly atOnce: AtOnce;
  /** Minutes of children that their own jobs want. */
  readonly kept: readonly (Int32Array | undefined)[];
  readonly spentToday: readonly SpentToday[];
  /** Work of one set day that animals depend on, by that day. */
  readonly boundOn: ReadonlyMap<number, readonly WorkNeed[]>;
}

/** What of a day’s hours is taken before anything else, and what of it lacks hours. */
export interface DayTaken {
  readonly chores: readonly ChoreDay[];
  readonly onItsDay: readonly { readonly need: WorkNeed; readonly taken: WorkOnItsDay }[];
}

/**
 * Takes chores off the hours of days, then what was done today, then work of that one day.
 *
 * @returns a day’s taking: minutes that people give, and those of them that are left, which it lessens
 */
export function takingOf(
  hands: Hands,
): (given: readonly MinutesByDay[], left: readonly MinutesByDay[], day: number) => DayTaken {
  const { people, chores, kept, isOut, spentToday, boundOn } = hands;
  // The longest first: what is short goes into the hours that they leave.
  const inTurn = chores
    .map((chore, at) => ({ chore, at, ...choreHands(chore, people) }))
    .sort((a, b) => b.chore.hoursPerDay - a.chore.hoursPerDay);
  return (given, left, day) => {
    const taken: (ChoreDay | undefined)[] = chores.map(() => undefined);
    const isOutOn = (p: number): boolean => isOut(people[p]!, day);
    for (const each of inTurn)
      if (comesOn(each.chore, day)) taken[each.at] = takeChore(each, { left, kept, isOutOn }, day);
    // What was done today took its hours: they are not given to other work once more. The round stays
    // with whom it was in the morning, so that no tick takes it to somebody who has other work today.
    if (day === 0) for (const spent of spentToday) takeSpent(spent, people, left);
    const crews: WorkPiece[] = [];
    const onItsDay = (boundOn.get(day) ?? []).flatMap((need) => {
      const found = takeItsDay(need, hands, { given, left, crews });
      if (found && 1 < found.piece.workers.length) crews.push(found.piece);
      return found ? [{ need, taken: found }] : [];
    });
    return { chores: taken.filter((each) => each !== undefined), onItsDay };
  };
}

/**
 * Those with most time left do it, beyond their hours if need be; whoever is away does not. What
 * comes again and again through the day is rather for those who are in the house, and what takes
 * several for those who have the time at the same hours.
 */
function takeItsDay(
  need: WorkNeed,
  { people, isOut, atOnce }: Hands,
  {
    given,
    left,
    crews,
  }: {
    given: readonly MinutesByDay[];
    left: readonly MinutesByDay[];
    /** What takes several on this day already. */
    crews: readonly WorkPiece[];
  },
): WorkOnItsDay | undefined {
  const day = need.fromDay;
  const minutes = Math.max(1, Math.round(60 * need.hours));
  const count = need.conditions.peopleNeeded ?? 1;
  const inTurn = people
    .flatMap((person, w) => (canDo(person, need) && 0 < given[w]![day]! ? [w] : []))
    .sort(
      (a, b) =>
        (need.isThroughTheDay
          ? Number(isOut(people[a]!, day)) - Number(isOut(people[b]!, day))
          : 0) || left[b]![day]! - left[a]![day]!,
    );
  if (inTurn.length < count) return undefined;
  const ofTwo = (a: number, b: number): number => {
    const of = (w: number) => ({ person: people[w]!, minutes: given[w]![day]! });
    const taken = crews.filter(({ workers }) => workers.includes(a) && workers.includes(b));
    return atOnce(of(a), of(b), day) - taken.reduce((sum, piece) => sum + piece.minutes, 0);
  };
  const lack = (crew: readonly number[]): number =>
    Math.max(
      0,
      ...crew.map((w) => minutes - left[w]![day]!),
      ...crew.flatMap((a, k) => crew.slice(k + 1).map((b) => minutes - ofTwo(a, b))),
    );
  let workers = inTurn.slice(0, count);
  let shortMinutes = lack(workers);
  // Who is in the house at other hours is no hand beside them: others may have less time, but together.
  if (1 < count && 0 < shortMinutes)
    for (const a of inTurn) {
      const beside = inTurn
        .filter((b) => b !== a)
        .sort((b, c) => lack([a, b]) - lack([a, c]))
        .slice(0, count - 1);
      const short = lack([a, ...beside]);
      if (short < shortMinutes) [workers, shortMinutes] = [[a, ...beside], short];
    }
  for (const w of workers) left[w]![day] = Math.max(0, left[w]![day]! - minutes);
  return { piece: { day, minutes, workers: workers.sort((a, b) => a - b) }, shortMinutes };
}

/**
 * Hours of work that is done, of those whose work it was, then of those with most time: who did it
 * nobody says, and taken off another they would push out what is planned for that one today.
 */
function takeSpent(
  { hours, peopleNeeded, plannedFor = [], ...asked }: SpentToday,
  people: readonly WorkPerson[],
  left: readonly MinutesByDay[],
): void {
  const isPlanned = (w: number): number => Number(plannedFor.includes(people[w]!.id));
  const inTurn = people
    .flatMap((person, w) => (isFor(person, asked) ? [w] : []))
    .sort((a, b) => isPlanned(b) - isPlanned(a) || left[b]![0]! - left[a]![0]!);
  for (const w of inTurn.slice(0, peopleNeeded))
    left[w]![0] = Math.max(0, left[w]![0]! - Math.round(60 * hours));
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
    isOutOn,
  }: {
    left: readonly MinutesByDay[];
    kept: readonly (Int32Array | undefined)[];
    isOutOn: (person: number) => boolean;
  },
  day: number,
): ChoreDay {
  const has = (p: number): number => left[p]![day]!;
  const child = children.find((p) => minutes + (kept[p]?.[day] ?? 0) <= has(p));
  const most = (of: readonly number[]): number =>
    of.reduce((first, p) => (first < 0 || has(first) < has(p) ? p : first), -1);
  const inHouse = rounds?.includes('noon')
    ? most(others.filter((p) => minutes <= has(p) && !isOutOn(p)))
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
