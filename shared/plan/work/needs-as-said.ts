import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Progress } from '../../farm/job.js';
import type { Judgements } from '../../tables/judgements.js';
import { handsToday, plannedToday, takenOf } from './kept-plan.js';
import type { Reading, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/** A piece of work with what the household said of it: hours done, hours and days of its own. */
export function asSaid(
  need: WorkNeed,
  said: Progress | undefined,
  today: PlainDate,
  { leastHours }: Judgements['work'],
): WorkNeed {
  const { hoursDone = 0, ownHours } = said ?? {};
  const hours = ownHours ?? need.hours;
  const { learned: _learned, ...unlearned } = need;
  return {
    ...(ownHours === undefined ? need : { ...unlearned, hasOwnHours: true }),
    hours: 0 < hoursDone ? hoursLeft(hours - hoursDone, leastHours.value) : hours,
    ...(0 < hoursDone ? { hoursDone } : {}),
    ...(need.fromDay === need.untilDay ? { isOfOneDay: true as const } : {}),
    ...daysAsSaid(need, said, today),
  };
}

/** A minute: what is left of work that was done as it was reckoned is nothing. */
const NOTHING_H = 1 / 60;

/** Hours that are left of work: what was not reckoned with, where it is not ticked off all the same. */
const hoursLeft = (left: number, leastH: number): number => (NOTHING_H < left ? left : leastH);

type Days = Pick<WorkNeed, 'fromDay' | 'dueDay' | 'untilDay'>;

/** Put off, it only begins later; with a due day of your own all its days are yours. */
function daysAsSaid(need: Days, said: Progress | undefined, today: PlainDate): Days {
  const { notBefore, dueOn } = said ?? {};
  const putOff = notBefore === undefined ? undefined : daysBetween(today, notBefore);
  if (dueOn === undefined) {
    const { dueDay, untilDay } = need;
    return { fromDay: Math.max(0, need.fromDay, putOff ?? 0), dueDay, untilDay };
  }
  const dueDay = daysBetween(today, dueOn);
  return {
    fromDay: Math.max(0, putOff ?? Math.min(need.fromDay, dueDay)),
    dueDay,
    untilDay: Math.max(need.untilDay, dueDay),
  };
}

/** Hours of each who took part in work that was done today: nobody has them once more. */
export interface SpentToday {
  readonly hours: number;
  readonly peopleNeeded: number;
  readonly personIds?: readonly string[];
  readonly forWhom?: WorkNeed['forWhom'];
  /** Whose work it was in the plan of today. */
  readonly plannedFor?: readonly string[];
}

/** What was done today, whole or in part. */
export function spentToday(
  request: Pick<WorkRequest, 'today' | 'kept' | 'before'>,
  { needs, marks }: Reading,
): SpentToday[] {
  const { today } = request;
  return needs.flatMap(({ key, hours: reckoned, conditions, personIds, forWhom }) => {
    const said = marks.get(key);
    const part = said?.partOn === today ? (said.partHours ?? 0) : 0;
    const whole = said?.hours ?? said?.ownHours ?? reckoned;
    const rest = said?.doneOn === today ? Math.max(0, whole - (said.hoursDone ?? 0)) : 0;
    const hands = handsToday(plannedToday(request, key));
    // Of work that is spread over days, a tick without hours says that its pieces of today are done.
    // Planned again since a part of it was done, they are only the rest.
    const isOfToday = said?.hours === undefined && 0 < hands.length;
    const ofToday = isOfToday ? hands.reduce((sum, each) => sum + each.hours, 0) : Infinity;
    const hours = part + Math.min(rest, Math.max(0, ofToday - part));
    if (hours <= 0) return [];
    const spent = {
      peopleNeeded: conditions.peopleNeeded ?? 1,
      ...(personIds === undefined ? {} : { personIds }),
      ...(forWhom === undefined ? {} : { forWhom }),
    };
    if (hands.length === 0) return [{ hours, ...spent }];
    return takenOf(hands, hours).map((by) => ({
      ...{ hours: by.hours, plannedFor: by.personIds },
      ...spent,
    }));
  });
}
