import { daysBetween } from '../../calendar/plain-date.js';
import { finishDay, placedMinutes } from '../../schedule/work.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/**
 * Needs with what animals cannot do without first, where a plan leaves it undone: it waits no more
 * for what has no place itself (feed is fetched though nobody compared prices), and where no day has
 * the hours for it, it takes those of the day with most of them and goes beyond them.
 *
 * What takes more than a day, as a brooder that is built, is not put on one: the animals can come later.
 * Undefined where nothing is left undone that could be done. A store that is shut stays shut; rain
 * is no reason for chicks to be without feed.
 */
export function withAnimalsFirst(work: WholeWork): WorkNeed[] | undefined {
  const { needs, problem, fitted, request } = work;
  const { stayH, oneDayH } = request.tables.judgements.work;
  const stayMinutes = 60 * stayH.value;
  let isChanged = false;
  const next = needs.map((need, i): WorkNeed => {
    const { pinned, minutes } = problem.jobs[i]!;
    const placed = placedMinutes(fitted.plan[i]!);
    // What lacks a few minutes is done by staying longer.
    const isDone = 0 < placed && minutes - placed <= stayMinutes;
    const later = need.animalsNeedIt ? afterWhatItFollows(work, i) : undefined;
    if (later) isChanged = true;
    if (later) return later;
    if (pinned || (isDone && !(need.animalsNeedIt && isTooLate(work, i)))) return need;
    const isOfADay = need.animalsNeedIt && need.hours <= oneDayH.value;
    const mended = withoutUndone(work, i) ?? (isOfADay ? boundToADay(work, i) : undefined);
    if (mended) isChanged = true;
    return mended ?? need;
  });
  return isChanged ? next : undefined;
}

/** What is of use after its day is late all the same: chicks that wait for feed are not fed by then. */
const isTooLate = ({ needs, problem, fitted }: WholeWork, i: number): boolean =>
  !needs[i]!.isBeforeEvent && Math.max(0, problem.jobs[i]!.dueDay) < finishDay(fitted.plan[i]!);

/**
 * It goes without what it waits for that has no place: what animals need without all else, other work
 * without what the next of its kind takes the place of, as a walk of the grass, or what it waits for
 * only where that is done, as mowing for the hay of the last go.
 */
function withoutUndone({ needs, fitted }: WholeWork, i: number): WorkNeed | undefined {
  const need = needs[i]!;
  const isUndone = ({ key, onlyIfPlaced }: WorkNeed['waitsFor'][number]): boolean => {
    const at = needs.findIndex((other) => other.key === key);
    const { lapses, animalsNeedIt } = needs[at]!;
    const canGoWithout = onlyIfPlaced || (need.animalsNeedIt ? !animalsNeedIt : lapses === true);
    return fitted.plan[at]!.length === 0 && canGoWithout;
  };
  const undone = need.waitsFor.filter(isUndone);
  if (undone.length === 0) return undefined;
  const names = undone.map(({ key }) => needs.find((other) => other.key === key)!.name);
  return {
    ...need,
    waitsFor: need.waitsFor.filter((wait) => !undone.includes(wait)),
    doneWithout: [...(need.doneWithout ?? []), ...names],
  };
}

/**
 * It has one day: that suits it, between what it waits for and what waits for it, with most hours left;
 * of those in time, else the first there is. What makes ready for an event comes after what it waits
 * for also where it is late so: nobody hangs lamps in a brooder that does not stand.
 */
function boundToADay(work: WholeWork, i: number): WorkNeed | undefined {
  const { needs, problem, fitted, left, days } = work;
  const { conditions, isBeforeEvent } = needs[i]!;
  const { suits, able, fromDay, dueDay, untilDay, waitsFor } = problem.jobs[i]!;
  const after = Math.max(0, ...waitsFor.map(({ job }) => finishDay(fitted.plan[job]!)));
  const followers = problem.jobs.flatMap((job, k) =>
    job.waitsFor.some((wait) => wait.job === i) ? (fitted.plan[k]![0]?.day ?? []) : [],
  );
  const before = Math.min(Infinity, ...followers);
  const hoursOn = (day: number): number =>
    Math.max(0, ...able.map((w) => left.left(problem.jobs[i]!, w, day)));
  /** What speaks against a day, the gravest first. */
  const against = (day: number): number[] => [
    suits?.[day] === 0 ? 1 : 0,
    isBeforeEvent && day < after ? 1 : 0,
    Math.max(0, day - Math.max(0, fromDay, dueDay)),
    day < after || before < day ? 1 : 0,
    -hoursOn(day),
  ];
  let best: { readonly day: number; readonly against: readonly number[] } | undefined;
  for (let day = Math.max(0, fromDay); day <= Math.min(untilDay, problem.days - 1); day++) {
    if (conditions.shopsOpen && days.isShut[day] === 1) continue;
    const found = { day, against: against(day) };
    if (best === undefined || isLess(found.against, best.against)) best = found;
  }
  if (best === undefined) return undefined;
  const { day } = best;
  return { ...needs[i]!, fromDay: day, untilDay: day, waitsFor: [], isBoundToADay: true };
}

/** By the first in which they differ. */
function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, k) => value !== b[k]);
  return 0 <= at && a[at]! < b[at]!;
}

/**
 * Work of one set day before an event comes on the day on which what it follows is done, where that is
 * later and still before the event: no brooder is warmed up that is not bedded.
 */
function afterWhatItFollows({ needs, fitted }: WholeWork, i: number): WorkNeed | undefined {
  const { fromDay, untilDay, isOfOneDay, follows = [], lastUseDay = -1 } = needs[i]!;
  if (!isOfOneDay || fromDay !== untilDay) return undefined;
  const { setDay = fromDay } = needs[i]!;
  const done = follows.map(({ key }) => {
    const at = needs.findIndex((other) => other.key === key);
    return at < 0 ? 0 : finishDay(fitted.plan[at]!);
  });
  const last = Math.max(...done);
  // What it follows may have found an earlier day since: then it is back on its own.
  const day = last <= setDay || lastUseDay < last ? setDay : last;
  return day === fromDay ? undefined : { ...needs[i]!, fromDay: day, untilDay: day, setDay };
}

/**
 * Needs as the last plan already has them mended, so that one that is made again begins from there;
 * undefined where it had nothing to mend.
 */
export function asKeptForAnimals(
  { kept, today }: WorkRequest,
  needs: readonly WorkNeed[],
): WorkNeed[] | undefined {
  let isMended = false;
  const next = needs.map((need): WorkNeed => {
    const { isBoundToADay, doneWithout, pieces = [] } = kept?.jobs[need.key] ?? {};
    const day = pieces[0] ? daysBetween(today, pieces[0].date) : -1;
    const isIn = need.fromDay <= day && day <= need.untilDay;
    const isBound = isBoundToADay === true && need.animalsNeedIt === true && isIn;
    if (!isBound && !doneWithout) return need;
    isMended = true;
    const without = doneWithout ? { doneWithout } : {};
    const bound = { fromDay: day, untilDay: day, waitsFor: [], isBoundToADay: true as const };
    if (isBound) return { ...need, ...bound, ...without };
    const isWithout = (key: string): boolean =>
      needs.some((other) => other.key === key && doneWithout!.includes(other.name));
    return { ...need, waitsFor: need.waitsFor.filter(({ key }) => !isWithout(key)), ...without };
  });
  return isMended ? next : undefined;
}
