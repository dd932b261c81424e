import { datesFrom, weekdayOf } from '../../calendar/plain-date.js';
import { sunHours } from '../../calendar/clock-offset.js';
import type { Worker } from '../../schedule/work.js';
import { areHomeAtOnce, minutesAtOnce } from './at-once.js';
import {
  takingOf,
  type AtOnce,
  type ChoreDay,
  type Hands,
  type IsOut,
  type WorkOnItsDay,
} from './hands-on-day.js';
import type { Tables } from '../../tables/tables.js';
import type { WorkNeed } from './work-need.js';
import type { WorkNeeds } from './work-needs.js';
import { outOn } from '../out-by-day.js';
import { canDo, hoursOn, isAdultThere, type WorkPerson } from './work-people.js';
import type { WorkRequest } from './work-request.js';

export interface WorkHours {
  /** What is left when chores are done. */
  readonly workers: readonly Worker[];
  /** All hours people give, chores included: minutes by day. */
  readonly given: readonly Int32Array[];
  readonly choreDays: readonly (readonly ChoreDay[])[];
  /** Work of one set day that animals depend on, by its key: it takes its hours next. */
  readonly onItsDay: ReadonlyMap<string, WorkOnItsDay>;
  /** Whose hours they are, for what looks at one day. */
  readonly hands: Hands;
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
  const isOut: IsOut = (person, day) => outOn(person, dates[day]!, tables) !== undefined;
  const boundOn = new Map<number, WorkNeed[]>();
  for (const need of needs) {
    if (!isBoundToItsDay(need)) continue;
    const { fromDay } = need;
    boundOn.set(fromDay, [...(boundOn.get(fromDay) ?? []), need]);
  }
  // Who is in the house by day is first for what comes again and again through it.
  for (const each of boundOn.values())
    each.sort((a, b) => Number(b.isThroughTheDay ?? false) - Number(a.isThroughTheDay ?? false));
  const atOnce: AtOnce = (one, other, day) => minutesAtOnce(one, other, dates[day]!, tables);
  const hands = { people, chores, kept, isOut, atOnce, spentToday, boundOn };
  const take = takingOf(hands);
  const onItsDay = new Map<string, WorkOnItsDay>();
  const choreDays = dates.map((_, day) => {
    const taken = take(given, left, day);
    for (const each of taken.onItsDay) onItsDay.set(each.need.key, each.taken);
    return taken.chores;
  });
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
    const together = togetherOf({ hands, given, onItsDay }, w, tables);
    return {
      ...{ minutes, lightMinutes },
      ...(together.size === 0 ? {} : { together }),
      ...(people[w]!.isChild ? { helpsFirst: true } : {}),
    };
  });
  return { workers, given, choreDays, onItsDay, hands };
}

/**
 * Minutes by day that somebody has at the same hours as each who comes after, of those with whom it
 * is fewer than either has; what takes both on its day is taken off.
 */
function togetherOf(
  { hands, given, onItsDay }: Pick<WorkHours, 'hands' | 'given' | 'onItsDay'>,
  one: number,
  tables: Tables,
): Map<number, Int32Array> {
  const { people, atOnce } = hands;
  const together = new Map<number, Int32Array>();
  for (let other = one + 1; other < people.length; other++) {
    if (areHomeAtOnce(people[one]!, people[other]!, tables)) continue;
    const fewer = given[one]!.map((minutes, day) => Math.min(minutes, given[other]![day]!));
    const both = fewer.map((minutes, day) =>
      minutes === 0
        ? 0
        : atOnce(
            { person: people[one]!, minutes: given[one]![day]! },
            { person: people[other]!, minutes: given[other]![day]! },
            day,
          ),
    );
    if (both.every((minutes, day) => minutes === fewer[day])) continue;
    for (const { piece } of onItsDay.values())
      if (piece.workers.includes(one) && piece.workers.includes(other))
        both[piece.day] = Math.max(0, both[piece.day]! - piece.minutes);
    together.set(other, both);
  }
  return together;
}

/** Done on one set day because animals depend on it, and asking nothing of that day. */
function isBoundToItsDay(need: WorkNeed): boolean {
  const { priority, fromDay, untilDay, conditions, isBoundToADay } = need;
  if (isBoundToADay) return true;
  const { peopleNeeded: _people, ...asks } = conditions;
  const asksNothing = Object.values(asks).every((each) => each === undefined || each === false);
  return priority === 'must' && fromDay === untilDay && asksNothing;
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
