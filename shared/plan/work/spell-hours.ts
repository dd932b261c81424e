import { WorkDays } from '../../schedule/work-days.js';
import { placeInOrder } from '../../schedule/work-placing.js';
import { suitsOn } from '../../schedule/work-reasons.js';
import { placedMinutes } from '../../schedule/work.js';
import type { Worker, WorkJob } from '../../schedule/work.js';
import type { WorkNeed } from './work-need.js';

/**
 * Lets work that begins a dry spell begin only where there are hours for all that follows in the
 * spell: grass is not mown on Thursday when nobody can rake it before Monday, and not on Monday when
 * the bales would lie until Saturday. Hours are those that chores and work of set days leave, whatever
 * else is planned. Where no day has them it lies for a day more; where that does not do either, all of
 * it is put on the days with fewest hours wanting (`spells-bound.ts`).
 *
 * @param hurriedShare share of its hours that each may lack all the same; what is done in one go is
 *   planned that much shorter where it would else begin a week later
 */
export function withHoursForSpells(
  jobs: readonly WorkJob[],
  needs: readonly WorkNeed[],
  workers: readonly Worker[],
  hurriedShare: number,
): WorkJob[] {
  const days = workers[0]?.minutes.length ?? 0;
  let free: WorkDays | undefined;
  let room: RoomAlone | undefined;
  const hurried = new Set<WorkJob>();
  const begun = jobs.map((job, i) => {
    const runDays = needs[i]!.conditions.dryDaysInRow;
    if (runDays === undefined || job.pinned) return job;
    const chain = chainOf(jobs, i, runDays);
    const inSpell = chain.filter(({ days: waits }) => 0 < waits);
    if (inSpell.length === 0) return job;
    const hours = (free ??= new WorkDays({ days, workers, jobs: [] }));
    const alone = (room ??= roomAlone(new WorkDays({ days, workers, jobs: [] }), days));
    const last = Math.min(job.untilDay, days - 1);
    const isFit = ({ links, lies }: Way, day: number, share: number): boolean => {
      const span = { day, runDays: lies, hurriedShare: share };
      return mayHaveHours(alone, job, links, span) && hasHours(hours, job, links, span);
    };
    const fitDays = (way: Way): Uint8Array => {
      const suits = new Uint8Array(days);
      for (let day = Math.max(0, job.fromDay); day <= last; day++)
        suits[day] = isFit(way, day, hurriedShare) ? 1 : 0;
      return suits;
    };
    /** Whether it fits unhurried on one of the first days on which it fits at all. */
    const isUnhurriedFrom = (way: Way, first: number): boolean => {
      for (let day = first; day <= Math.min(first + WEEK_DAYS - 1, last); day++)
        if (isFit(way, day, 0)) return true;
      return false;
    };
    const kinds = inSpell.length < chain.length ? [chain, inSpell] : [chain];
    const ways = [runDays, longestSpell(runDays)].flatMap((lies) =>
      kinds.map((links): Way => ({ links, lies })),
    );
    // Work that begins a spell on the same days would take them from each other.
    const rivals = jobs.filter(
      (other, k) =>
        needs[k]!.conditions.dryDaysInRow !== undefined &&
        !other.pinned &&
        other.fromDay <= job.untilDay &&
        job.fromDay <= other.untilDay,
    ).length;
    let open: Uint8Array | undefined;
    for (const way of ways) {
      const suits = fitDays(way);
      const first = suits.indexOf(1);
      if (first < 0) continue;
      if (!open && !isUnhurriedFrom(way, first))
        for (const each of [job, ...way.links.map((link) => link.job)]) hurried.add(each);
      open = open ? suits.map((is, day) => is | open![day]!) : suits;
      if (rivals <= countOf(open)) break;
    }
    return open ? { ...job, suits: open } : job;
  });
  return begun.map((job, i) =>
    hurried.has(jobs[i]!) && job.smallestPieceMinutes === undefined
      ? { ...job, minutes: Math.ceil((1 - hurriedShare) * job.minutes) }
      : job,
  );
}

const countOf = (days: Uint8Array): number => days.reduce((sum, is) => sum + is, 0);

/** What follows, and within how many days of the beginning. */
interface Way {
  readonly links: readonly Link[];
  readonly lies: number;
}

/** Days within which all of a spell is done where its own have no hours for it: it lies for a day more. */
export const longestSpell = (runDays: number): number => runDays + 1;

/** Sooner than wait so much longer somebody hurries. */
const WEEK_DAYS = 7;

/** Work of a chain, after which of it it is done, and how many days after. */
export interface Link {
  readonly job: WorkJob;
  readonly after: number;
  readonly days: number;
  readonly atMostDays?: number;
}

/**
 * All that waits a day or more for work or for what follows it, and can still lie in its spell; what
 * follows at once on the last of them, as hauling does on baling, comes at the end.
 */
export function chainOf(jobs: readonly WorkJob[], head: number, runDays: number): Link[] {
  const chain: Link[] = [];
  const at = new Map([[head, { place: -1, lag: 0 }]]);
  // What waits may stand before what it waits for in the list.
  const grow = (isMeant: (before: { readonly place: number }, days: number) => boolean): void => {
    for (let grew = true; grew;) {
      grew = false;
      jobs.forEach((job, i) => {
        if (at.has(i) || job.pinned) return;
        for (const wait of job.waitsFor) {
          const before = at.get(wait.job);
          if (!before || !isMeant(before, wait.days)) continue;
          if (runDays <= before.lag + wait.days) continue;
          at.set(i, { place: chain.length, lag: before.lag + wait.days });
          chain.push({ ...wait, job, after: before.place });
          grew = true;
          return;
        }
      });
    }
  };
  grow((_, days) => 1 <= days);
  grow(({ place }, days) => days === 0 && 0 <= place);
  return chain;
}

/** Bales lie out for a night at most. */
export const NIGHT_OUT_DAYS = 1;

/** Days from one on, as many as a spell has, with the share of its hours that each may lack. */
interface SpellSpan {
  readonly day: number;
  readonly runDays: number;
  readonly hurriedShare: number;
}

/** Of days that nobody has asked for yet. */
const UNKNOWN = -1;

/** Whether work has the hours between two days if nothing else is done on them. */
type RoomAlone = (job: WorkJob, minutes: number, from: number, until: number) => boolean;

/** @param free with nothing put on it, now or later */
function roomAlone(free: WorkDays, days: number): RoomAlone {
  const known = new Map<WorkJob, Int32Array>();
  const minutesOf = (job: WorkJob): Int32Array => {
    const before = known.get(job);
    if (before) return before;
    const minutes = new Int32Array(days).fill(UNKNOWN);
    known.set(job, minutes);
    return minutes;
  };
  return (job, minutes, from, until) => {
    const all = minutesOf(job);
    const last = Math.min(until, job.untilDay, days - 1);
    let sum = 0;
    for (let day = from; day <= last; day++) {
      if (all[day] === UNKNOWN) all[day] = suitsOn(job, day) ? free.together(job, day) : 0;
      const here = all[day]!;
      sum = job.smallestPieceMinutes === undefined ? Math.max(sum, here) : sum + here;
      if (minutes <= sum) return true;
    }
    return false;
  };
}

/** Whether each of a chain would have its hours by itself: most days are ruled out by that alone. */
const mayHaveHours = (
  room: RoomAlone,
  head: WorkJob,
  chain: readonly Link[],
  { day, runDays, hurriedShare }: SpellSpan,
): boolean =>
  [{ job: head, days: 1 }, ...chain].every(({ job, days }) => {
    const last = day + runDays - 1 + (days === 0 ? NIGHT_OUT_DAYS : 0);
    return room(job, Math.ceil((1 - hurriedShare) * job.minutes), day, last);
  });

/** Whether work and all of its chain have the hours, begun on a day and done within the spell. */
function hasHours(
  free: WorkDays,
  head: WorkJob,
  chain: readonly Link[],
  { day, runDays, hurriedShare }: SpellSpan,
): boolean {
  const last = day + runDays - 1;
  const within = (job: WorkJob, untilDay: number, waitsFor: WorkJob['waitsFor']): WorkJob => ({
    ...job,
    minutes: Math.ceil((1 - hurriedShare) * job.minutes),
    fromDay: day,
    untilDay,
    waitsFor,
  });
  const jobs = [
    within(head, day, []),
    ...chain.map(({ job, after, days, ...wait }) =>
      within(job, days === 0 ? last + NIGHT_OUT_DAYS : last, [{ ...wait, job: after + 1, days }]),
    ),
  ];
  const list = Int32Array.from(jobs.keys());
  const { pieces } = placeInOrder({ ...free.problem, jobs }, free, list);
  return jobs.every(({ minutes }, i) => placedMinutes(pieces[i]!) === minutes);
}
