import { suitsOn } from '../../schedule/work-reasons.js';
import { WorkDays } from '../../schedule/work-days.js';
import { finishDay, type WorkJob } from '../../schedule/work.js';
import { chainOf, longestSpell, NIGHT_OUT_DAYS, type Link } from './spell-hours.js';
import { suitsNeed } from './suits-of-needs.js';
import type { WholeWork } from './whole-work.js';
import type { WorkNeed } from './work-need.js';
import { isWorthTelling } from './worth-telling.js';

/**
 * Needs with each dry spell that a plan tears apart put on the days in a row on which the fewest hours
 * are wanting: hay that is raked on Wednesday and baled on Saturday is lost, and half an hour more on
 * one evening is found. What its days lack is said of them, as of all work of a set day. What is left of
 * a spell that was begun is put so as well: hay that is mown lies until it is baled.
 *
 * Undefined where every spell is whole, or no days could be.
 */
export function withSpellsBound(work: WholeWork): WorkNeed[] | undefined {
  const { needs, problem } = work;
  const free = new WorkDays({ ...problem, jobs: [] });
  const taken = new Map<number, number>();
  const bound = new Map<number, number>();
  needs.forEach((_, i) => {
    const spell = spellOf(work, i);
    if (!spell || isWhole(work, i, spell)) return;
    const ends = spell.isBegun ? [spell.lasts, longestSpell(spell.lasts)] : [spell.lasts];
    const found = firstOf(ends, (lasts) =>
      daysOfFewest(work, i, { ...spell, lasts, free, taken, bound }),
    );
    for (const { job, day } of found ?? []) {
      bound.set(problem.jobs.indexOf(job), day);
      taken.set(day, (taken.get(day) ?? 0) + job.minutes);
    }
  });
  if (bound.size === 0) return undefined;
  return needs.map((need, i): WorkNeed => {
    const day = bound.get(i);
    if (day === undefined) return need;
    return { ...need, fromDay: day, untilDay: day, waitsFor: [], isBoundToADay: true };
  });
}

const isInOneGo = ({ pinned, smallestPieceMinutes }: WorkJob): boolean =>
  !pinned && smallestPieceMinutes === undefined;

/** Work that is done in one dry spell with what it begins with. */
interface Spell {
  readonly chain: readonly Link[];
  /** What it begins with is done: its days are counted from today, not from the first of what is left. */
  readonly isBegun: boolean;
  /** Days that it has. */
  readonly lasts: number;
}

/** The spell that a piece of work begins, or of which it is the first that is left. */
function spellOf({ needs, problem }: WholeWork, i: number): Spell | undefined {
  const { conditions, spellUntilDay } = needs[i]!;
  const { dryDaysInRow } = conditions;
  const job = problem.jobs[i]!;
  const lasts = dryDaysInRow ?? (spellUntilDay === undefined ? undefined : spellUntilDay + 1);
  if (lasts === undefined || !isInOneGo(job)) return undefined;
  const isBegun = dryDaysInRow === undefined;
  const isLeft = (k: number): boolean =>
    needs[k]!.spellUntilDay !== undefined && !problem.jobs[k]!.pinned;
  // A stack is looked at for heating after the spell, and not because of it.
  if (isBegun && (!conditions.noRain || job.waitsFor.some((wait) => isLeft(wait.job))))
    return undefined;
  const chain = chainOf(problem.jobs, i, isBegun ? longestSpell(lasts) : lasts);
  const inSpell = chain.filter(({ days }) => 0 < days);
  if (!isBegun && inSpell.length === 0) return undefined;
  return inSpell.every((link) => isInOneGo(link.job)) ? { chain, isBegun, lasts } : undefined;
}

/** What is found for the first of some that anything is found for. */
function firstOf<From, Found>(
  all: readonly From[],
  find: (each: From) => Found | undefined,
): Found | undefined {
  for (const each of all) {
    const found = find(each);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Whether all of a spell is done in its days, and nothing of it lies longer than it may. */
function isWhole(
  { needs, problem, fitted }: WholeWork,
  head: number,
  { chain, isBegun, lasts }: Spell,
): boolean {
  const inSpell = chain.filter(({ days }) => 0 < days);
  const at = [head, ...inSpell.map(({ job }) => problem.jobs.indexOf(job))];
  const dayOf = (k: number): number => finishDay(fitted.plan[k]!);
  const first = isBegun ? 0 : dayOf(head);
  if (at.some((k) => dayOf(k) < 0 || first + longestSpell(lasts) <= dayOf(k))) return false;
  return at.every((k) =>
    needs[k]!.waitsFor.every(({ key, atMostDays }) => {
      const before = atMostDays === undefined ? -1 : needs.findIndex((each) => each.key === key);
      return before < 0 || dayOf(k) - dayOf(before) <= atMostDays!;
    }),
  );
}

interface OnDay {
  readonly job: WorkJob;
  readonly day: number;
}

/**
 * The days for all of a spell on which the fewest minutes are wanting, of such nearly alike the first.
 * Sooner than a day too late somebody stays so long as people stay for the rest of their work.
 */
function daysOfFewest(
  work: WholeWork,
  head: number,
  {
    chain,
    isBegun,
    lasts,
    free,
    taken,
    bound,
  }: Spell & {
    /** Hours whatever else is planned that may go to other days. */
    readonly free: WorkDays;
    /** Minutes that spells put before take of a day. */
    readonly taken: ReadonlyMap<number, number>;
    readonly bound: ReadonlyMap<number, number>;
  },
): readonly OnDay[] | undefined {
  const { needs, problem, fitted, days, request } = work;
  const first = problem.jobs[head]!;
  const after = first.waitsFor.map(
    (wait) => (bound.get(wait.job) ?? finishDay(fitted.plan[wait.job]!)) + wait.days,
  );
  const suits = isBegun
    ? first.suits
    : suitsNeed(needs[head]!, days, request.tables.work.wetDay.rainMm);
  const lastFrom = (from: number): number => (isBegun ? 0 : from) + lasts - 1;
  const last = Math.min(first.untilDay, problem.days - 1, ...(isBegun ? [lastFrom(0)] : []));
  const stayMinutes = 60 * request.tables.judgements.work.stayH.value;
  const hasOn = (job: WorkJob, day: number): number =>
    day < problem.days ? Math.max(0, free.together(job, day) - (taken.get(day) ?? 0)) : 0;
  const lackOf = (job: WorkJob, day: number, all: readonly OnDay[]): number => {
    // What is done in pieces may go on the next day: bales lie out for a night.
    const until = day + (isInOneGo(job) ? 0 : NIGHT_OUT_DAYS);
    let has = 0;
    for (let on = day; on <= until; on++)
      has += Math.max(0, hasOn(job, on) - minutesOf(all.filter((each) => each.day === on)));
    return Math.max(0, job.minutes - has);
  };
  let found: { readonly all: readonly OnDay[]; readonly lack: number } | undefined;
  const goOn = (all: readonly OnDay[], lack: number, from: number): void => {
    if (found && !isWorthTelling((found.lack - lack) / 60)) return;
    const link = chain[all.length - 1];
    if (!link) {
      found = { all, lack };
      return;
    }
    const before = all[link.after + 1]!.day;
    const until = Math.min(before + (link.atMostDays ?? Infinity), lastFrom(from));
    if (link.days === 0) {
      goOn([...all, { job: link.job, day: before }], lack + lackOf(link.job, before, all), from);
      return;
    }
    for (let day = before + link.days; day <= until; day++)
      if (suitsOn(link.job, day))
        goOn([...all, { job: link.job, day }], lack + lackOf(link.job, day, all), from);
  };
  for (let day = Math.max(0, first.fromDay, ...after); day <= last; day++)
    if (suits === undefined || suits[day] === 1)
      goOn(
        [{ job: first, day }],
        lackOf(first, day, []) + stayMinutes * Math.max(0, day - first.dueDay),
        day,
      );
  // What follows at once is bound with it where it is done on that day, and else goes by its hours.
  return found?.all.filter(({ job, day }, k, all) => {
    if (k === 0 || 0 < chain[k - 1]!.days) return true;
    const others = all.filter((each) => each.job !== job && each.day === day);
    return job.minutes <= hasOn(job, day) - minutesOf(others);
  });
}

const minutesOf = (all: readonly OnDay[]): number =>
  all.reduce((sum, { job: { minutes } }) => sum + minutes, 0);
