import type { Entry, StayEnd, StayRecord, StayStart } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';
import { stayBefore } from './stay-reasons.js';
import type { Chosen } from './surplus.js';

/** A dated move: a herd goes into a paddock and stays some days. */
export interface Move {
  readonly herdId: string;
  readonly paddockId: string;
  readonly from: string;
  readonly to: string;
  readonly days: number;
  /** Days it may stay in one piece at most. */
  readonly longestDays: number;
  /** Strips it is grazed in, so that no stay in one is longer. */
  readonly strips: number;
  readonly entry: Entry;
  readonly start: StayStart;
  readonly end: StayEnd;
  /** Why the herd's stay before this one ended. */
  readonly endBefore?: StayEnd;
  readonly massBefore: number;
  readonly massAfter: number;
  readonly entryHeightCm: number;
  readonly exitHeightCm: number;
  readonly restDays?: number;
  readonly restAskedDays: number;
  readonly grownInRestKgPerHa?: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly hayKg: number;
  readonly liveKg: number;
  readonly head: number;
  readonly isRank: boolean;
  /** Digestible share of what stands when the herd goes in, and the share of it that is dead. */
  readonly digestibleShare: number;
  readonly deadShare: number;
}

/** Every stay of the chosen order as a move, in date order. */
export function movesOf(context: PastureContext, { books, problem }: Chosen): Move[] {
  return books.stays.map((stay): Move => {
    const before = stayBefore(books, stay);
    return {
      ...moveOf(context, stay),
      longestDays: problem.herds[stay.herd]!.longestStayDays,
      end: stay.end,
      ...(before ? { endBefore: before.end } : {}),
    };
  });
}

function moveOf(context: PastureContext, stay: StayRecord): Omit<Move, 'longestDays' | 'end'> {
  const { paddocks, herds, grass, herdDays, dateOf } = context;
  const { kgPerHaCm, sward } = grass.swards[stay.paddock]!;
  const days = herdDays[stay.herd]!;
  const tidy = (value: number): number => Math.round(value * 10) / 10;
  return {
    herdId: herds[stay.herd]!.id,
    paddockId: paddocks[stay.paddock]!.id,
    from: dateOf(stay.from),
    to: dateOf(stay.from + stay.days - 1),
    days: stay.days,
    start: stay.start,
    strips: stay.strips,
    entry: stay.entry,
    massBefore: tidy(stay.massBefore),
    massAfter: tidy(stay.massAfter),
    entryHeightCm: tidy(stay.massBefore / kgPerHaCm),
    exitHeightCm: tidy(stay.massAfter / kgPerHaCm),
    // Of a stay that runs the rest lies before the day on which the herd went in.
    ...(stay.restDays === undefined || stay.start === 'out-already'
      ? {}
      : { restDays: stay.restDays }),
    ...(stay.grownInRestKgPerHa === undefined
      ? {}
      : { grownInRestKgPerHa: tidy(stay.grownInRestKgPerHa) }),
    restAskedDays: sward.leastRestDays,
    grownKg: tidy(stay.grownKg),
    eatenKg: tidy(stay.eatenKg),
    trampledKg: tidy(stay.trampledKg),
    hayKg: tidy(stay.hayKg),
    liveKg: tidy(days.liveKg[stay.from]!),
    head: days.head[stay.from]!,
    isRank: stay.isRank,
    digestibleShare: stay.digestibleShare,
    deadShare: stay.deadShare,
  };
}
