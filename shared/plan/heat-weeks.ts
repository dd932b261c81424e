import { ventilationWPerK } from '../poultry/brooder-heat.js';
import { riseBelowLampK } from '../poultry/lamp-zone.js';
import type { BroodingHeat, DayConditions, DayHeat } from './heat-days.js';
import { hasCoolEnd, type HeatRig } from './heat-rig.js';
import { bestSetting, settingOf, type HeatHour, type HeatSetting } from './heat-setting.js';

/** One week of age in the brooder: how its heaters are set for the coldest night and warmest noon. */
export interface HeatWeek {
  /** Days after arrival. */
  readonly first: number;
  readonly last: number;
  readonly share: number;
  /** How high lamps can hang with the lid on. */
  readonly headroomM: number;
  readonly coldDay: DayConditions;
  /** By day lamps hang higher than on this night where it would be too warm below. */
  readonly night: HeatSetting;
  /** A day in the middle of the week, as warm as is usual. */
  readonly usualDay: DayConditions;
  readonly day: HeatSetting;
  readonly hotDay: DayConditions;
  readonly noon: HeatSetting;
  /** At the warmest noon with everything left as on the coldest night. */
  readonly left: HeatSetting;
}

/** First and last day of each week of age, up to the last day with heat; parted where heaters go out or work again. */
export function weeksOfAge(
  days: readonly DayConditions[],
  lastHeatDay: number,
): { first: number; last: number }[] {
  const weeks: { first: number; last: number }[] = [];
  for (let i = 0; i <= lastHeatDay; i++) {
    const { ageDays, working } = days[i]!;
    const begins = i === 0 || ageDays % 7 === 0 || working !== days[i - 1]!.working;
    if (begins) weeks.push({ first: i, last: i });
    else weeks[weeks.length - 1] = { ...weeks.at(-1)!, last: i };
  }
  return weeks;
}

/**
 * The weeks of a brooder.
 *
 * @param headroomM how high a lamp can hang above the bedding of a day: under the lid where there is one
 */
export function heatWeeks(
  heat: BroodingHeat,
  days: readonly DayHeat[],
  lastHeatDay: number,
  headroomM: (day: number) => number,
): HeatWeek[] {
  return weeksOfAge(heat.conditions, lastHeatDay).map(({ first, last }) => {
    const span = heat.conditions.slice(first, last + 1);
    const asked = {
      coldDay: most(span, (day) => day.targetC - day.nightC),
      usualDay: span[Math.floor(span.length / 2)]!,
      hotDay: hottestDay(span),
    };
    const { share } = days[first]!;
    return heatOfSpan(heat, asked, { first, last, share, headroomM: headroomM(last) });
  });
}

/**
 * How the heaters are set over some days, for their coldest night, a usual day and their hottest noon.
 *
 * @param span its days after arrival, the share of the brooder in use, how high a lamp can hang with
 *   the lid on where there is one, and how high it hangs already; left out, as high as it may on the coldest night
 */
export function heatOfSpan(
  heat: BroodingHeat,
  { coldDay, usualDay, hotDay }: Pick<HeatWeek, 'coldDay' | 'usualDay' | 'hotDay'>,
  span: {
    readonly first: number;
    readonly last: number;
    readonly share: number;
    readonly headroomM: number;
    readonly hangsAtM?: number;
  },
): HeatWeek {
  const { rig } = heat;
  const { first, last, share, headroomM, hangsAtM } = span;
  const nightHour = hourOf(heat, coldDay, 'night', coldDay.nightC);
  const lowest = bestSetting(rig, nightHour, { share, heightM: hangsAtM ?? rig.clearanceM });
  const heightM = hangsAtM ?? highestM(rig, nightHour, lowest, headroomM);
  const night = settingOf(rig, nightHour, { ...lowest, share, heightM });
  const noonHour = hourOf(heat, hotDay, 'day', hotDay.noonC);
  return {
    ...{ first, last, share, headroomM, coldDay, night, usualDay, hotDay },
    day: byDay(hourOf(heat, usualDay, 'day', usualDay.usualDayC)),
    noon: byDay(noonHour),
    left: settingOf(rig, noonHour, { ...night, share, heightM, ...untouched(rig, night) }),
  };

  /** By day the lamps stay at the night's height unless it is far too warm straight below them. */
  function byDay(hour: HeatHour): HeatSetting {
    return bestByDay(rig, hour, { share, heightM, headroomM });
  }
}

/** Without a thermostat they go on as somebody set them for the night. */
const untouched = ({ heat }: HeatRig, { on, watts }: HeatSetting): { duty?: number } =>
  heat.thermostat || on === 0 ? {} : { duty: watts / (on * heat.wattsEach) };

/** The best setting by day: lamps are raised, through the top where the lid is off, before it is far too hot below. */
export function bestByDay(
  rig: HeatRig,
  hour: HeatHour,
  { share, heightM, headroomM }: { share: number; heightM: number; headroomM: number },
): HeatSetting {
  return bestSetting(rig, hour, { share, heightM }, (as) => highestM(rig, hour, as, headroomM));
}

const most = <T>(all: readonly T[], of: (each: T) => number): T =>
  all.reduce((best, each) => (of(best) < of(each) ? each : best));

/** The day of some whose noon is warmest against what the schedule wants. */
export const hottestDay = (days: readonly DayConditions[]): DayConditions =>
  most(days, (day) => day.noonC - day.targetC);

/** An hour of a day. By day nobody counts places by a lamp: it is warm enough beside it. */
export function hourOf(
  { rig, elevationM }: BroodingHeat,
  day: DayConditions,
  when: 'night' | 'day',
  aroundC: number,
): HeatHour {
  const counts = when === 'night' || rig.heat.kind === 'plate';
  return {
    aroundC,
    targetC: day.targetC,
    warnC: day.warnC,
    birdsW: when === 'night' ? day.birds.mid : day.birdsW,
    airWPerK: ventilationWPerK(day.freshAir.mid, elevationM),
    places: counts ? day.places : 0,
    working: day.working,
    isNight: when === 'night',
  };
}

/** As high as the lamps can hang and still be warm enough below, in steps; never too low. */
function highestM(
  { heat, table, clearanceM, isAirSchedule, hasLid }: HeatRig,
  { targetC }: HeatHour,
  setting: HeatSetting,
  headroomM: number,
): number {
  if (heat.kind !== 'lamp' || isAirSchedule || heat.thermostat || setting.on === 0)
    return clearanceM;
  const underTop = hasLid && setting.isOpen ? Infinity : headroomM;
  const highest = Math.min(table.lamps.highestM, underTop) + 1e-9;
  // The rise falls with the square of the height.
  const oneM = riseBelowLampK(table.radiant, heat.wattsEach, 1);
  const isWarmAt = (heightM: number): boolean =>
    targetC <= setting.airC + oneM / (heightM * heightM);
  let heightM = clearanceM;
  for (let next = heightM + table.lamps.stepM; next <= highest; next += table.lamps.stepM) {
    if (!isWarmAt(next)) break;
    heightM = next;
  }
  return heightM;
}

/** Parts of its length to which a brooder may be closed off. */
const SHARES = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4];

/**
 * The share of its length that the birds need on each day, by week of age; 1 where it is not worth
 * a board. A part so small that its heaters leave no cool end on the coldest night is not offered.
 */
export function sharesNeeded(heat: BroodingHeat, floorM2: number): number[] {
  const { rig, conditions } = heat;
  const shares = conditions.map(() => 1);
  for (const { first, last } of weeksOfAge(conditions, conditions.length - 1)) {
    const span = conditions.slice(first, last + 1);
    const neededM2 = Math.max(...span.map((day) => day.floorM2));
    const coldDay = most(span, (day) => day.targetC - day.nightC);
    const hour = hourOf(heat, coldDay, 'night', coldDay.nightC);
    const share = SHARES.find((each) => {
      if (each * floorM2 < neededM2 - 1e-9) return false;
      if (!hasCoolEnd(rig)) return true;
      const { airC } = bestSetting(rig, hour, { share: each, heightM: rig.clearanceM });
      return airC <= hour.targetC - rig.table.lamps.coolEndBelowK;
    });
    if (share !== undefined) shares.fill(share, first, last + 1);
  }
  return shares;
}

/** Energy of a usual day with the heaters set as the hours ask, kWh. */
export function usualDayKWh(
  heat: BroodingHeat,
  { asked, need, share }: DayHeat,
  { night: { heightM }, headroomM }: HeatWeek,
): number {
  if (need.mid === 0) return 0;
  const night = hourOf(heat, asked, 'night', asked.usualNightC);
  const day = hourOf(heat, asked, 'day', asked.usualDayC);
  const watts =
    bestSetting(heat.rig, night, { share, heightM }).watts +
    bestByDay(heat.rig, day, { share, heightM, headroomM }).watts;
  return (HALF_DAY_H * watts) / 1000;
}

const HALF_DAY_H = 12;
