import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { Cow } from '../farm/cow.js';
import type { CattleGroup, Herd } from '../farm/herd.js';
import { apartOf } from './quarantine.js';
import { rowById, type Tables } from '../tables/tables.js';
import { cattleWaterL, hotDayWaterL } from './cattle-water.js';
import type { CattleClass } from '../tables/pasture-tables.js';
import { calfWeighsKg, cowDay } from './cow-day.js';
import { calvingDue, type CalvingDue } from './gestation.js';
import { animalUnits, intakeKg } from './intake.js';
import { groupsOf, hasOwnDates, type PlannedGroup, type PlannedHerd } from './named-cows.js';

/** Head of one group and what one animal of it needs, on each day. */
export interface GroupDays {
  readonly head: Float64Array;
  readonly eachKg: Float64Array;
  readonly weightKg: Float64Array;
}

/** What a herd is on each day, index = days after the first day. */
export interface HerdDays {
  readonly head: Float64Array;
  /** Of all of them, calves at foot with their mothers. */
  readonly liveKg: Float64Array;
  /** The calves' part of it. */
  readonly calfLiveKg: Float64Array;
  readonly demandKg: Float64Array;
  /** The part of it that is to come from grass: cattle in quarantine are fed in their pen. */
  readonly grassKg: Float64Array;
  /** The plain rule: a share of body weight. */
  readonly shareOfWeightKg: Float64Array;
  readonly animalUnits: Float64Array;
  readonly waterL: Float64Array;
  /** The same on a hot day of that time of year, by the higher of two charts. */
  readonly hotWaterL: Float64Array;
  readonly leastHotWaterL: Float64Array;
  readonly mostHotWaterL: Float64Array;
  readonly nitrogenKg: Float64Array;
  readonly phosphorusKg: Float64Array;
  /** In the order of the herd's groups. */
  readonly groups: readonly GroupDays[];
}

/** Day on which a group calves, from its due date or its service date. */
export function dueOf(
  group: Pick<CattleGroup, 'bredOn' | 'calvesOn' | 'breedId'>,
  tables: Tables,
): CalvingDue | undefined {
  if (group.bredOn !== undefined && group.calvesOn === undefined)
    return calvingDue(tables.gestation, group.bredOn, group.breedId);
  if (group.calvesOn === undefined) return undefined;
  const sdDays = tables.gestation.sdDays.value;
  return {
    due: group.calvesOn,
    early: addDays(group.calvesOn, -2 * sdDays),
    late: addDays(group.calvesOn, 2 * sdDays),
    meanDays: 0,
    sdDays,
    row: tables.gestation.sdDays,
  };
}

/** A calving of a group, or of a named cow that has a date of her own. */
export interface Calving {
  readonly group: PlannedGroup;
  readonly due: CalvingDue;
  /** Animals that calve by it. */
  readonly head: number;
  /** Place of the group among those of the herd that have a date, from 1. */
  readonly number: number;
  readonly cow?: Cow;
}

/**
 * The calvings of a herd. A group whose every head has a date of her own has none left, but keeps
 * its number, so that those of other groups stay what they are.
 */
export function calvingsOf(herd: PlannedHerd, tables: Tables): Calving[] {
  const groups = groupsOf(herd).filter((of) => dueOf(of, tables) !== undefined);
  const isApart = ({ cow }: PlannedGroup): boolean => cow !== undefined && hasOwnDates(cow);
  return herd.groups.flatMap((group) => {
    const due = dueOf(group, tables);
    if (!due) return [];
    const number = groups.indexOf(group.of) + 1;
    if (isApart(group)) return [{ group, due, head: 1, number, cow: group.cow! }];
    const together = herd.groups.filter((each) => each.of === group.of && !isApart(each));
    const head = together.reduce((sum, each) => sum + each.head, 0);
    return group === together[0] ? [{ group, due, head, number }] : [];
  });
}

/** Whether a group is on the farm on a day: on that of its arrival, not on that it leaves. */
export const isThere = ({ arrivesOn, leavesOn }: CattleGroup, on: PlainDate): boolean =>
  (arrivesOn === undefined || arrivesOn <= on) && (leavesOn === undefined || on < leavesOn);

/** Whether any of a herd's cattle are on the farm on a day. */
export const hasCattle = ({ groups }: Pick<Herd, 'groups'>, on: PlainDate): boolean =>
  groups.some((group) => 0 < group.head && isThere(group, on));

/** Head that is milked on a day: milk cows are, but for the weeks before they calve. */
export const milkedHead = (herd: Pick<Herd, 'groups'>, on: PlainDate, tables: Tables): number =>
  milkedOf(herd, on, tables).reduce((sum, { head }) => sum + head, 0);

/** What they are expected to give on the day on which it is planned, kg. */
export const milkedKg = (herd: Pick<Herd, 'groups'>, on: PlainDate, tables: Tables): number =>
  milkedOf(herd, on, tables).reduce((sum, { head, milkKg }) => sum + head * milkKg, 0);

function milkedOf(
  { groups }: Pick<Herd, 'groups'>,
  on: PlainDate,
  tables: Tables,
): { readonly head: number; readonly milkKg: number }[] {
  return groups
    .filter((group) => isThere(group, on))
    .flatMap((group) => {
      const due = dueOf(group, tables)?.due;
      const { of, milkKg } = cowDay(group, due, { date: on, typedOn: on }, tables);
      return of.equation === 'nrc-dairy' ? [{ head: group.head, milkKg }] : [];
    });
}

/** Calves at foot on a day: those of cows that have calved and are not weaned yet. */
export const calvesAtFoot = (
  { groups }: Pick<Herd, 'groups'>,
  on: PlainDate,
  tables: Tables,
): number =>
  groups
    .filter((group) => isThere(group, on))
    .filter((group) => {
      const due = dueOf(group, tables)?.due;
      // A cow with a calf of whose calving nothing is known has it all the same.
      if (due === undefined) return group.classId === 'cow-calf';
      return cowDay(group, due, { date: on, typedOn: on }, tables).calfDays !== undefined;
    })
    .reduce((sum, { head }) => sum + head, 0);

/**
 * Head, live weight, need, water and manure of a herd on every day.
 *
 * @param energyMcalPerKg net energy for maintenance of what they eat, by day
 */
export function herdDays(
  herd: Herd,
  tables: Tables,
  span: {
    first: PlainDate;
    days: number;
    /** Day from which weights as given grow; before it they stand still. */
    from: number;
    minC: ArrayLike<number>;
    maxC: ArrayLike<number>;
    /** High of a hot day of that time of year, °C. */
    hotC: ArrayLike<number>;
    energyMcalPerKg: ArrayLike<number>;
  },
): HerdDays {
  const n = span.days;
  const days = {
    head: new Float64Array(n),
    liveKg: new Float64Array(n),
    calfLiveKg: new Float64Array(n),
    demandKg: new Float64Array(n),
    grassKg: new Float64Array(n),
    shareOfWeightKg: new Float64Array(n),
    animalUnits: new Float64Array(n),
    waterL: new Float64Array(n),
    hotWaterL: new Float64Array(n),
    leastHotWaterL: new Float64Array(n),
    mostHotWaterL: new Float64Array(n),
    nitrogenKg: new Float64Array(n),
    phosphorusKg: new Float64Array(n),
    groups: herd.groups.map(() => ({
      head: new Float64Array(n),
      eachKg: new Float64Array(n),
      weightKg: new Float64Array(n),
    })),
  };
  for (const [g, group] of herd.groups.entries()) {
    addGroup(days, days.groups[g]!, group, tables, {
      ...span,
      grassFrom: grassFrom(herd, group, tables, span.first),
    });
  }
  return days;
}

/** Day from which a group grazes: after its quarantine, where it joins cattle that are there. */
function grassFrom(herd: Herd, group: CattleGroup, tables: Tables, first: PlainDate): number {
  const from = apartOf(herd.groups, group, tables)?.out ?? group.arrivesOn;
  return from === undefined ? 0 : daysBetween(first, from);
}

/** Grass or hay that the grain of a milk cow stands in for, kg of dry matter a day. */
export const grainSpares = (
  { grainKgPerDay = 0 }: CattleGroup,
  { equation }: Pick<CattleClass, 'equation'>,
  { judgements }: Pick<Tables, 'judgements'>,
): number =>
  equation === 'nrc-dairy' ? grainKgPerDay * judgements.grass.grainSparesShare.value : 0;

function addGroup(
  days: HerdDays,
  each: GroupDays,
  group: CattleGroup,
  tables: Tables,
  span: Parameters<typeof herdDays>[2] & { grassFrom: number },
): void {
  const { classes, animalUnits: units } = tables.cattle;
  const due = dueOf(group, tables)?.due;
  const own = rowById(classes, group.classId);
  const startKg = group.weightKg ?? own.weightKg;
  const gainKg = group.gainKgPerDay ?? own.gainKgPerDay;
  const begins = group.arrivesOn ? Math.max(0, daysBetween(span.first, group.arrivesOn)) : 0;
  const ends = group.leavesOn
    ? Math.min(span.days, daysBetween(span.first, group.leavesOn))
    : span.days;
  const typedOn = addDays(span.first, span.from);
  for (let i = begins; i < ends; i++) {
    const date = addDays(span.first, i);
    const cow = cowDay(group, due, { date, typedOn }, tables);
    const { of, milkKg, calfKg, calfDays, weekOfLactation } = cow;
    const weightKg = startKg + gainKg * Math.max(0, i - Math.max(begins, span.from));
    const wholeKg = intakeKg(of, {
      ...{ weightKg, milkKg, weekOfLactation },
      energyMcalPerKg: span.energyMcalPerKg[i]!,
    });
    const dryMatterKg = wholeKg - grainSpares(group, of, tables);
    // Calves at foot count from four months on.
    const calves = calfDays !== undefined && units.calfOverDays <= calfDays ? units.calfUnits : 0;
    const head = group.head;
    const unitsEach = animalUnits(units.perKgLive, weightKg) + calves;
    each.head[i] = head;
    each.eachKg[i] = dryMatterKg + calfKg;
    each.weightKg[i] = weightKg;
    days.head[i]! += head;
    const calfLiveKg =
      calfDays === undefined ? 0 : calfWeighsKg(tables.cattle.calfWeight, calfDays);
    days.liveKg[i]! += head * (weightKg + calfLiveKg);
    days.calfLiveKg[i]! += head * calfLiveKg;
    days.demandKg[i]! += head * (dryMatterKg + calfKg);
    if (span.grassFrom <= i) days.grassKg[i]! += head * (dryMatterKg + calfKg);
    days.shareOfWeightKg[i]! += head * (of.bodyWeightShare.value * weightKg + calfKg);
    days.animalUnits[i]! += head * unitsEach;
    const day = { maxC: span.maxC[i]!, minC: span.minC[i]!, weightKg, dryMatterKg, milkKg };
    days.waterL[i]! += head * cattleWaterL(tables.cattleWater, of, day);
    const hot = hotDayWaterL(tables.cattleWater, of, { ...day, maxC: span.hotC[i]! });
    days.hotWaterL[i]! += head * hot.value;
    days.leastHotWaterL[i]! += head * hot.low;
    days.mostHotWaterL[i]! += head * hot.high;
    days.nitrogenKg[i]! += head * weightKg * of.manure.nKgPerDayPerKgLive;
    days.phosphorusKg[i]! += head * weightKg * of.manure.pKgPerDayPerKgLive;
  }
}
