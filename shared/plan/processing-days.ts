import type { PlanContext } from './context.js';
import { areHandsUnknown, handsOn, type DayOfHands } from './hands-of-day.js';
import { workOfDay } from './processing-work.js';

export interface ProcessingDay extends DayOfHands {
  /** Days after the arrival. */
  readonly index: number;
  readonly birds: number;
}

/** Birds that are gone by the evening of a day. */
export type LeavingDay = Pick<ProcessingDay, 'date' | 'index' | 'birds' | 'beginsH'>;

export interface ProcessingDays {
  /** Those that have hands, from the first to the last; empty where no day has. */
  readonly days: readonly ProcessingDay[];
  /** Birds for which no day has hands: who processes them is still to be arranged. */
  readonly left: number;
  /** Birds past the hours there are on all days: those left, or for which all days are longer. */
  readonly over: number;
  /** All birds: those that are left count on the planned day. One day at least. */
  readonly leaving: readonly LeavingDay[];
  /** The planned day as it is, whether birds are processed on it or not. */
  readonly planned: DayOfHands;
}

/**
 * The days on which a batch is processed: the fewest that have the hands and the daylight for all of
 * it, of those the latest, and as many birds on each as it can take of an even share; fewer ones where
 * they need be somewhat longer only, which is said. None is kept
 * past its age: weekends before the planned day are looked at, two at first and more where these do
 * not hold them, but no day on which the birds weigh too little. A day on which hardly any could be
 * done is left out. Where the hours of all days are too few, all are longer, as far as that is bearable;
 * the rest is left, and said, and never heaped on a day. A hired
 * processor takes all on one day, and where no people are named nothing is split: who could come is
 * not known.
 *
 * @param birds whole birds to process, 1 or more
 */
export function processingDays(context: PlanContext, birds: number): ProcessingDays {
  const before = known.get(context);
  if (before?.birds === birds) return before.found;
  const found = daysFor(context, birds);
  known.set(context, { birds, found });
  return found;
}

/** Feed, weights, freezer and tasks of a plan all ask for its days. */
const known = new WeakMap<
  PlanContext,
  { readonly birds: number; readonly found: ProcessingDays }
>();

function daysFor(context: PlanContext, birds: number): ProcessingDays {
  const { life, batch, tables, dateOf } = context;
  const last = life.days - 1;
  const planned = handsOn(context, dateOf(last));
  const all = { ...planned, index: last, birds };
  if (batch.processing === 'hired' || areHandsUnknown(context) || birds <= planned.most)
    return { days: [all], left: 0, over: 0, leaving: [all], planned };
  const least = tables.judgements.birds.leastADay.value;
  const few = Math.min(birds, least);
  // A day is not set up for a handful: they are done on the others, which last somewhat longer.
  const needed = Math.max(1, birds - (least - 1));
  const possible = daysForAll(context, few, needed);
  const room = roomOf(possible);
  const usual = needed <= room ? fewestLatest(possible, needed) : undefined;
  const chosen = longDays(context, birds, { few, usual }) ?? usual;
  const over = chosen ? 0 : birds - room;
  const left = chosen ? 0 : Math.max(0, birds - longRoomOf(possible));
  const days = shared(chosen ?? possible, birds - left).toReversed();
  const leaving = left === 0 ? days : withThoseLeft(days, { ...all, birds: left });
  return { days, left, over, leaving, planned };
}

/**
 * Fewer days that are longer than the hours given, where there are such: no further day is set up for
 * birds that take less work than it takes to set up and to clean.
 */
function longDays(
  context: PlanContext,
  birds: number,
  { few, usual }: { few: number; usual: readonly Possible[] | undefined },
): readonly Possible[] | undefined {
  const needed = Math.max(1, birds - birdsOfSettingUp(context));
  const possible = daysForAll(context, few, needed);
  if (roomOf(possible) < needed) return undefined;
  const days = fewestLatest(possible, needed);
  return birds <= longRoomOf(days) && days.length < (usual?.length ?? Infinity) ? days : undefined;
}

/** Birds that take as much work as it takes to set up and to clean. */
export function birdsOfSettingUp(context: Pick<PlanContext, 'batch' | 'tables'>): number {
  const { fixedH, birdH } = workOfDay(context);
  return Math.floor(fixedH / birdH);
}

/** The days near the planned one that hold so many; all there are where no span of days does. */
function daysForAll(context: PlanContext, least: number, needed: number): Possible[] {
  const { splitDays, splitDaysMost } = context.tables.judgements.birds;
  let possible: Possible[] = [];
  for (let days = splitDays.value; days <= splitDaysMost.value; days += WEEK) {
    possible = daysWithHands(context, least, days);
    if (needed <= roomOf(possible)) break;
  }
  return possible;
}

const WEEK = 7;

const roomOf = (days: readonly Possible[]): number => days.reduce((sum, { most }) => sum + most, 0);

const longRoomOf = (days: readonly Pick<Possible, 'mostLong'>[]): number =>
  days.reduce((sum, { mostLong }) => sum + mostLong, 0);

function withThoseLeft(days: readonly LeavingDay[], left: LeavingDay): LeavingDay[] {
  const others = days.filter(({ index }) => index < left.index);
  const same = days.find(({ index }) => index === left.index);
  return [...others, { ...left, birds: left.birds + (same?.birds ?? 0) }];
}

type Possible = Omit<ProcessingDay, 'birds'>;

/**
 * Days up to the planned one on which so many birds can be done at least, the latest first; beyond
 * the usual days only those on which birds weigh enough of what they would in the end.
 */
function daysWithHands(context: PlanContext, least: number, days: number): Possible[] {
  const { meanWeightKg } = context.life;
  const { splitDays, leastSplitWeight } = context.tables.judgements.birds;
  const last = context.life.days - 1;
  const leastKg = leastSplitWeight.value * meanWeightKg[last]!;
  return daysUpTo(context, days).filter(
    ({ most, index }) =>
      least <= most && (last - index < splitDays.value || leastKg <= meanWeightKg[index]!),
  );
}

/** The days among which a batch may be split, the planned one first, then those before it. */
export function daysUpTo(
  context: PlanContext,
  most = context.tables.judgements.birds.splitDays.value,
): Possible[] {
  const { life, dateOf } = context;
  const last = life.days - 1;
  // What was told of birds that are gone is behind: the others are done from today on.
  const from = life.told && 0 < life.told.left.at(-1)! ? Math.min(last, life.told.knownTo) : 0;
  const count = Math.min(most, last + 1 - from);
  return Array.from({ length: count }, (_, back) => {
    const index = last - back;
    return { ...handsOn(context, dateOf(index)), index };
  });
}

/** The fewest days that hold so many birds, of those the latest; all of them where they do not. */
function fewestLatest(possible: readonly Possible[], needed: number): Possible[] {
  const largest = (days: readonly Possible[], count: number): number =>
    days
      .map(({ most }) => most)
      .sort((a, b) => b - a)
      .slice(0, count)
      .reduce((sum, most) => sum + most, 0);
  let count = 1;
  while (count < possible.length && largest(possible, count) < needed) count++;
  const chosen: Possible[] = [];
  let held = 0;
  possible.forEach((day, k) => {
    const others = count - chosen.length - 1;
    if (others < 0) return;
    const isNeeded = possible.length - k <= others + 1;
    if (!isNeeded && held + day.most + largest(possible.slice(k + 1), others) < needed) return;
    chosen.push(day);
    held += day.most;
  });
  return chosen;
}

/**
 * Birds by day: an even share of them, or as many as a day can take; what is over one by one where it
 * makes the day least longer for each, up to a long day first.
 */
function shared(days: readonly Possible[], birds: number): ProcessingDay[] {
  const now = days.map((day) => ({ ...day, birds: 0 })).sort((a, b) => a.most - b.most);
  const past = (day: ProcessingDay): number => (day.birds - day.most) / Math.max(1, day.hands);
  const ways: readonly { mostOf(day: Possible): number; first(day: ProcessingDay): number }[] = [
    { mostOf: ({ most }) => most, first: (day) => day.birds },
    { mostOf: ({ mostLong }) => mostLong, first: past },
    { mostOf: () => Infinity, first: past },
  ];
  let left = birds;
  for (const { mostOf, first } of ways) {
    let open = now.filter((day) => day.birds < mostOf(day));
    for (; 0 < left && 0 < open.length; left--) {
      const next = open.reduce((best, day) => (first(day) <= first(best) ? day : best));
      next.birds++;
      if (mostOf(next) <= next.birds) open = open.filter((day) => day !== next);
    }
  }
  return now.sort((a, b) => b.index - a.index);
}

/** Share of the birds that is still there on each day, those processed on days before it left out. */
export function shareStillThere(context: PlanContext, birds: number): Float64Array {
  const last = context.life.days - 1;
  const early = processingDays(context, birds).days.filter(({ index }) => index < last);
  return Float64Array.from({ length: last + 1 }, (_, day) => {
    const gone = early.reduce((sum, { index, birds: n }) => sum + (index <= day ? n : 0), 0);
    return 1 - gone / birds;
  });
}

/** Birds that hands can do on all days among which a batch may be split, long ones if need be. */
export function mostOnAllDays(context: PlanContext): number {
  const days = daysForAll(context, context.tables.judgements.birds.leastADay.value, Infinity);
  return Math.max(roomOf(days), longRoomOf(days));
}
