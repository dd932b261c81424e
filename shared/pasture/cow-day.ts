import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { CattleGroup } from '../farm/herd.js';
import { straightLines } from '../maths/straight-lines.js';
import { rowById, type Tables } from '../tables/tables.js';
import type { CattleClass, CattleTable } from '../tables/pasture-tables.js';

const DRY = 'dry-cow';
const NURSING = 'cow-calf';
/** Beef classes that calve. */
const CALVE = [DRY, NURSING, 'heifer'];

/** One animal of a group on a day, by when it calved or will. */
export interface CowDay {
  readonly of: CattleClass;
  readonly milkKg: number;
  readonly weekOfLactation: number;
  /** Grass that the calf at her foot eats, dry matter. */
  readonly calfKg: number;
  /** Age of the calf at her foot; undefined without one, and where no calving is known. */
  readonly calfDays: number | undefined;
}

/**
 * What a group is on a day: cows in calf nurse from calving to weaning and are dry then, milk cows
 * are dry for some weeks before they calve, milk follows its curve, and calves graze more each month.
 * Where no calving is known a class stays what it is.
 *
 * @param due the calving that is known
 * @param typedOn day that milk given by the household is of; a class's own is that of the best day
 */
export function cowDay(
  group: CattleGroup,
  due: PlainDate | undefined,
  { date, typedOn }: { date: PlainDate; typedOn: PlainDate },
  { cattle, judgements }: Tables,
): CowDay {
  const own = rowById(cattle.classes, group.classId);
  const { dryCowDays, midLactationWeeks, weaningDays } = judgements.grass;
  const milkOf = (of: CattleClass): number =>
    of.milkKgPerDay === 0 ? 0 : (group.milkKgPerDay ?? of.milkKgPerDay);
  const byCurve = (of: CattleClass, calved: PlainDate, share: (days: number) => number): number => {
    const typedAfter = group.milkKgPerDay === undefined ? -1 : daysBetween(calved, typedOn);
    const then = typedAfter <= 0 ? 1 : share(typedAfter);
    return (milkOf(of) * share(daysBetween(calved, date))) / Math.max(LEAST_SHARE, then);
  };
  const none = { calfKg: 0, calfDays: undefined };
  if (due === undefined)
    return { of: own, milkKg: milkOf(own), weekOfLactation: midLactationWeeks.value, ...none };
  if (own.equation === 'nrc-dairy') {
    const isDry = addDays(due, -dryCowDays.value) <= date && date < due;
    const of = isDry ? rowById(cattle.classes, DRY) : own;
    const inMilk = due <= date ? daysBetween(due, date) : undefined;
    return {
      of,
      milkKg: isDry ? 0 : inMilk === undefined ? milkOf(own) : byCurve(own, due, milkShareOfDairy),
      weekOfLactation: inMilk === undefined ? midLactationWeeks.value : inMilk / 7,
      ...none,
    };
  }
  if (!CALVE.includes(own.id))
    return { of: own, milkKg: milkOf(own), weekOfLactation: midLactationWeeks.value, ...none };
  const calved = calvedOn(own.id, due, date);
  const calfDays = calved === undefined ? undefined : daysBetween(calved, date);
  if (calfDays === undefined || calfDays < 0)
    return { of: own, milkKg: 0, weekOfLactation: midLactationWeeks.value, ...none };
  if (weaningDays.value <= calfDays)
    return {
      of: rowById(cattle.classes, DRY),
      milkKg: 0,
      weekOfLactation: calfDays / 7,
      ...none,
    };
  const nursing = rowById(cattle.classes, NURSING);
  return {
    of: nursing,
    milkKg: byCurve(nursing, calved!, milkShareOfSuckler),
    weekOfLactation: calfDays / 7,
    calfKg: calfEatsKg(cattle.calfAtFoot.rows, calfDays),
    calfDays,
  };
}

/** A cow with a calf that is due again has last year's at her foot. */
const calvedOn = (classId: string, due: PlainDate, date: PlainDate): PlainDate | undefined =>
  due <= date ? due : classId === NURSING ? addDays(due, -365) : undefined;

/** Day on which the calves that are at foot, or the next, are no longer counted at foot; undefined of milk cows and cattle that calve none. */
export function weanedOn(
  { classId }: CattleGroup,
  due: PlainDate,
  today: PlainDate,
  weaningDays: number,
): PlainDate | undefined {
  if (!CALVE.includes(classId)) return undefined;
  const calved = calvedOn(classId, due, today);
  const weaned = calved === undefined ? undefined : addDays(calved, weaningDays);
  return weaned !== undefined && today <= weaned ? weaned : addDays(due, weaningDays);
}

/** Week in which a beef cow milks most. Jenkins and Ferrell 1984, in NRC 1996, chapter 4. */
const PEAK_WEEK = 8.5;

/**
 * Milk of a beef cow over that of her best week, by days since calving: n/(a·e^(kn)) with its peak
 * at 8.5 weeks. NRC 1996, equations 4-11 to 4-15, after Jenkins and Ferrell 1984.
 */
export const milkShareOfSuckler = (days: number): number =>
  (days / 7 / PEAK_WEEK) * Math.exp(1 - days / 7 / PEAK_WEEK);

/** Right after calving the curve is near nothing: milk typed then says little of the best day. */
const LEAST_SHARE = 0.3;

/** Curve of a Simmental's first lactation to 305 days. Animal Bioscience 34, 2021, page 949. */
const WOOD = { b: 0.1029, c: 0.0015 };

/** Milk of a dairy cow over that of her best day, by days in milk, after Wood. */
export function milkShareOfDairy(days: number): number {
  const peak = WOOD.b / WOOD.c;
  const day = Math.max(1, days);
  return (day / peak) ** WOOD.b * Math.exp(WOOD.b - WOOD.c * day);
}

/** Dry matter of grass that a sucking calf eats at an age, kg a day; held at the last age. */
export const calfEatsKg = (
  rows: readonly { readonly ageDays: number; readonly kgPerDay: number }[],
  ageDays: number,
): number =>
  straightLines(
    rows.map((row) => row.ageDays),
    rows.map((row) => row.kgPerDay),
  )(ageDays);

/** Live weight of a sucking calf at an age, kg: along a straight line through the weight of one age. */
export const calfWeighsKg = (
  { atDays, kg, gainKgPerDay }: CattleTable['calfWeight'],
  ageDays: number,
): number => kg + gainKgPerDay * (ageDays - atDays);
