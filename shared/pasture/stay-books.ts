import type { Field, RunningStay } from './field.js';
import { daysOf } from './grazing-rules.js';
import type { GrazingProblem } from './grazing-problem.js';
import type { Entry, PaddockBook, StayEnd, StayRecord, StayStart } from './season-books.js';
import { massOf } from './sward.js';
import type { GrassState } from './sward-day.js';

/** More days than any season has. */
const ALWAYS = 1000;

/** A stay as it begins. */
export function newStay(
  problem: GrazingProblem,
  field: Field,
  of: {
    readonly herd: number;
    readonly paddock: number;
    readonly from: number;
    readonly start: StayStart;
    readonly entry: Entry;
  },
): RunningStay {
  const { harvestShare, rankDrop, herds } = problem;
  const { longestStayDays, demandKg } = herds[of.herd]!;
  const needKg = demandKg[of.from]!;
  const drop = field.sward.rankKgPerHa < field.mass ? rankDrop : 0;
  const days = Math.floor(daysOf(field, needKg, harvestShare[0]!));
  const inOneStrip = Math.min(longestStayDays, Math.max(1, days), harvestShare.length);
  const share = harvestShare[inOneStrip - 1]! - drop;
  const { digestibleShare, deadShare, digestibleEaten } = field.qualityFor(share);
  // Written out: a look ahead makes dozens, and spreads cost more than the sums.
  return {
    herd: of.herd,
    enteredOn: of.from,
    from: of.from,
    start: of.start,
    entry: of.entry,
    massBefore: field.mass,
    digestibleShare,
    deadShare,
    digestibleEaten,
    until: of.from + daysInStrips(problem, field, of.paddock, of.from, needKg),
    harvestShare: share,
    grownKg: 0,
    eatenKg: 0,
    trampledKg: 0,
    hayKg: 0,
  };
}

/**
 * Days in which a paddock is grazed once, strip by strip: what stands, and what strips that have
 * not been grazed yet grow meanwhile, half of it on average.
 */
function daysInStrips(
  { harvestShare, usualGrowth }: GrazingProblem,
  field: Field,
  paddock: number,
  day: number,
  needKg: number,
): number {
  const share = harvestShare[0]!;
  const standing = daysOf(field, needKg, share);
  const grownKg = usualGrowth[paddock]![day]! * field.sward.areaHa * share;
  const left = 1 - grownKg / needKg / 2;
  return left <= 0 ? ALWAYS : Math.max(1, Math.min(ALWAYS, Math.floor(standing / left)));
}

/** A stay that ends on a morning, as it goes into the books. */
export function recordOf(
  { herds }: GrazingProblem,
  field: Field,
  paddock: number,
  { day, end }: { readonly day: number; readonly end: StayEnd },
): StayRecord {
  const stay = field.stay!;
  return {
    herd: stay.herd,
    from: stay.from,
    start: stay.start,
    entry: stay.entry,
    massBefore: stay.massBefore,
    digestibleShare: stay.digestibleShare,
    deadShare: stay.deadShare,
    digestibleEaten: stay.digestibleEaten,
    grownKg: stay.grownKg,
    eatenKg: stay.eatenKg,
    trampledKg: stay.trampledKg,
    hayKg: stay.hayKg,
    paddock,
    end,
    days: day - stay.from,
    strips: Math.ceil((day - stay.from) / herds[stay.herd]!.longestStayDays),
    massAfter: field.mass,
    restDays: field.leftDay === undefined ? undefined : stay.from - field.leftDay,
    grownInRestKgPerHa:
      field.leftKgPerHa === undefined ? undefined : stay.massBefore - field.leftKgPerHa,
    isRank: field.sward.rankKgPerHa < stay.massBefore,
  };
}

/** Where the grass of a paddock went over the plan. */
export function bookOf(
  { from, to }: GrazingProblem,
  { sward, books, mass }: Field,
  start: GrassState,
): PaddockBook {
  const { days } = books!;
  const kg = (perHa: Float64Array): number => {
    let sum = 0;
    for (let day = from; day < to; day++) sum += perHa[day]!;
    return sum * sward.areaHa;
  };
  return {
    startKg: massOf(start) * sward.areaHa,
    endKg: mass * sward.areaHa,
    grownKg: kg(days.grown),
    eatenKg: kg(days.eaten),
    trampledKg: kg(days.trampled),
    mownKg: kg(days.mown),
    diedOffKg: kg(days.diedOff),
  };
}
