import type { Sourced } from '../explain/formula.js';
import type { Brooder } from '../farm/facility.js';
import { airRiseK, boxLossW } from '../poultry/brooder-box.js';
import {
  birdSensibleHeatW,
  freshAirM3PerH,
  heatersFor,
  lampsByRule,
  ventilationWPerK,
  type LowMidHigh,
} from '../poultry/brooder-heat.js';
import { underHeaterC } from '../poultry/brooding.js';
import { heatersOn } from '../farm/heat-out.js';
import { spaceRowAt } from '../poultry/space.js';
import type { HeatTable } from '../tables/heat-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { scheduleOf } from './brooding.js';
import type { PlanContext } from './context.js';
import { heatRig, riseUnderHeatK, warmsRoom, type HeatRig } from './heat-rig.js';
import { spaceStandardOf } from './space-standard.js';

/** What a day and its night ask of a brooder before anything is said of its walls. */
export interface DayConditions {
  readonly ageDays: number;
  /** Wanted by the schedule. */
  readonly targetC: number;
  readonly warnC: number;
  readonly dangerC: number;
  /** Air around the brooder: a cold night, a hot noon, and what is usual of both. */
  readonly nightC: number;
  readonly noonC: number;
  readonly usualNightC: number;
  readonly usualDayC: number;
  readonly freshAir: LowMidHigh;
  /** Warmth of the birds that a heater may be spared; none in their first week. */
  readonly birds: LowMidHigh;
  /** Warmth they give all the same, when it is a matter of too much. */
  readonly birdsW: number;
  /** Lamps that burn whatever is lost, while it is colder around the birds than they want it. */
  readonly spots: number;
  /** Heaters for every chick to have a place by one: lamps while they are small, plates always. */
  readonly places: number;
  /** Heaters that give heat: fewer than there are while some are out. */
  readonly working: number;
  readonly floorM2: number;
}

/** What the brooder asks of its heat source on one day. */
export interface DayHeat {
  readonly asked: DayConditions;
  readonly need: LowMidHigh;
  /** Mean over a usual day. */
  readonly meanNeedW: number;
  /** Air in the brooder that the need goes by. */
  readonly insideC: number;
  /** Share of the length in use. */
  readonly share: number;
}

export type HeatContext = Pick<
  PlanContext,
  'batch' | 'life' | 'tables' | 'farm' | 'weather' | 'brooderDays'
>;

/** A brooder for a batch: its rig, and the days from arrival until the move or the schedule's end. */
export interface BroodingHeat {
  readonly rig: HeatRig;
  readonly conditions: readonly DayConditions[];
  readonly elevationM: number;
}

/**
 * @param workingOn heaters that give heat on a day after arrival; left out, all there are: whether a
 *   brooder does for a batch is asked of what it has
 */
export function broodingHeat(
  context: HeatContext,
  brooder: Brooder,
  workingOn = (_day: number): number => brooder.heat.count,
): BroodingHeat {
  const schedule = scheduleOf(context);
  return {
    rig: heatRig(brooder, schedule, context.tables),
    conditions: conditionsOf(context, brooder, workingOn),
    elevationM: context.farm.elevationM,
  };
}

/** Heaters that give heat on each day of a batch, as it was told of its brooder. */
export const workingOf =
  ({ heatOuts = [], dateOf }: Pick<PlanContext, 'heatOuts' | 'dateOf'>, brooder: Brooder) =>
  (day: number): number =>
    heatersOn(brooder, heatOuts, dateOf(day));

function conditionsOf(
  context: HeatContext,
  brooder: Brooder,
  workingOn: (day: number) => number,
): DayConditions[] {
  const { life, tables, weather, brooderDays } = context;
  const { heat: table } = tables;
  const schedule = scheduleOf(context);
  const standard = spaceStandardOf(context);
  const result: DayConditions[] = [];
  for (let i = 0; i < brooderDays; i++) {
    const ageDays = life.arrivalAgeDays + i;
    const targetC = underHeaterC(schedule, ageDays);
    if (targetC === undefined) break;
    const weightKg = life.meanWeightKg[i]!;
    const count = life.aliveAll[i]!;
    const flock = { birds: count, weightKg, unventedGas: brooder.heat.kind === 'gas' };
    const isYoung = ageDays < table.birds.creditFromDay;
    const birds = times(birdSensibleHeatW(table.birds, weightKg, targetC), count);
    const { warnC, dangerC } = table.tooHot.rows.findLast((row) => row.fromDay <= ageDays)!;
    const nightC = nightAround(brooder, weather.coldMinC[i]!, table);
    const working = workingOn(i);
    result.push({
      ageDays,
      targetC,
      warnC,
      dangerC,
      nightC,
      noonC: dayAround(brooder, weather.hotMaxC[i]!, table),
      usualNightC: nightAround(brooder, weather.minC[i]!, table),
      usualDayC: dayAround(brooder, weather.maxC[i]!, table),
      freshAir: freshAirM3PerH(table.ventilation, flock),
      birds: isYoung ? NO_HEAT : birds,
      birdsW: isYoung ? count * weightKg * table.birds.newlyHatchedWPerKg : birds.mid,
      spots: spotsFor(brooder, table, life.placed, ageDays),
      places: placesFor(brooder, table, { chicks: life.placed, ageDays, nightC, working }),
      working,
      floorM2: count * spaceRowAt(standard.rows, ageDays).floorM2,
    });
  }
  return result;
}

/** Heat of every day, with so much of the brooder's length in use. */
export function daysOfHeat(heat: BroodingHeat, shares: readonly number[]): DayHeat[] {
  const { rig, elevationM } = heat;
  const { radiant, zone } = rig.table;
  const risesK = {
    low: riseUnderHeatK(rig, rig.clearanceM, radiant.shareHigh),
    mid: riseUnderHeatK(rig, rig.clearanceM),
    high: rig.heat.kind === 'gas' ? 0 : riseUnderHeatK(rig, rig.clearanceM, radiant.shareLow),
  };
  return heat.conditions.map((day, i) => {
    const share = shares[i]!;
    const box = rig.box(share, !rig.hasLid);
    const needW = (aroundC: number, riseK: number, airM3PerH: number, birdsW: number): number => {
      const warmer = day.targetC - aroundC;
      if (warmer <= 0) return 0;
      if (rig.heat.kind === 'plate') return day.places * rig.heat.wattsEach;
      const airWPerK = ventilationWPerK(airM3PerH, elevationM);
      if (
        warmer <= airRiseK(rig.table.openTop, box, airWPerK, { watts: birdsW, warmed: 'all-air' })
      )
        return 0;
      const least = day.spots * rig.heat.wattsEach;
      const deltaK = Math.max(0, warmer - riseK);
      return Math.max(least, boxLossW(rig.table.openTop, box, airWPerK, deltaK) - birdsW);
    };
    const { freshAir, birds, nightC } = day;
    const meanC = (day.usualNightC + day.usualDayC) / 2;
    return {
      asked: day,
      share,
      insideC: rig.heat.kind === 'plate' ? zone.coolEndMinC : day.targetC - risesK.mid,
      meanNeedW: needW(meanC, risesK.mid, freshAir.mid, birds.mid),
      need: {
        low: needW(nightC, risesK.low, freshAir.low, birds.high),
        mid: needW(nightC, risesK.mid, freshAir.mid, birds.mid),
        high: needW(nightC, risesK.high, freshAir.high, birds.low),
      },
    };
  });
}

/** Index of the night that asks for most; where one lamp is enough on many, of the coldest. */
export function coldestOf(days: readonly DayHeat[]): number {
  const asks = ({ need, asked }: DayHeat): number =>
    need.mid + (asked.targetC - asked.nightC) / 1e3;
  return days.reduce((best, day, i) => (asks(days[best]!) < asks(day) ? i : best), 0);
}

const NO_HEAT: LowMidHigh = { low: 0, mid: 0, high: 0 };
const times = (range: LowMidHigh, factor: number): LowMidHigh => ({
  low: range.low * factor,
  mid: range.mid * factor,
  high: range.high * factor,
});

/**
 * Lamps that burn while it is colder around the birds than they want it, however little heat is
 * lost: chicks sleep under them, and the common rule for a mild room says how many share one.
 */
function spotsFor(
  { heat }: Brooder,
  { lampRule, lamps }: HeatTable,
  chicks: number,
  ageDays: number,
): number {
  if (heat.kind !== 'lamp') return 0;
  if (lamps.spotsUntilDay <= ageDays) return 1;
  return heatersFor((chicks * lampRule.lampW) / lampRule.chicks, heat.wattsEach);
}

/** Plates carry so many chicks each; lamps are shared by so many while chicks are small. */
function placesFor(
  { heat }: Brooder,
  { plate, lampRule, lamps }: HeatTable,
  {
    chicks,
    ageDays,
    nightC,
    working,
  }: { chicks: number; ageDays: number; nightC: number; working: number },
): number {
  if (heat.kind === 'plate') return heatersFor(chicks * plate.wattsPerChick, heat.wattsEach);
  if (heat.kind === 'gas' || lamps.spotsUntilDay <= ageDays) return 0;
  return Math.min(working, lampsByRule(lampRule, chicks, nightC, heat.wattsEach) ?? 0);
}

/** Air around a brooder at night: a building keeps a little of the day's warmth. */
export function nightAround(brooder: Brooder, outsideC: number, table: HeatTable): number {
  if (brooder.standsIn === 'heated-room') return brooder.roomC ?? table.heatedRoom.airC;
  return brooder.standsIn === 'outdoors' ? outsideC : outsideC + table.building.warmerThanOutsideK;
}

/** By day, with the doors of a building open: as warm as outdoors. A heated room is no cooler. */
function dayAround(brooder: Brooder, outsideC: number, table: HeatTable): number {
  return brooder.standsIn === 'heated-room'
    ? Math.max(outsideC, brooder.roomC ?? table.heatedRoom.airC)
    : outsideC;
}

/** Rows that the air around a brooder rests on: none outdoors, nor in a room whose air is given. */
export function surroundingRows(brooder: Brooder, { heat }: Tables): readonly Sourced[] {
  if (brooder.standsIn === 'outdoors') return [];
  if (brooder.standsIn === 'unheated-building') return [heat.building];
  return brooder.roomC === undefined ? [heat.heatedRoom] : [];
}

/** Materials of the walls and the lid; a printed R-value is the user's own. */
export function shellRows({ walls, roof }: Brooder, { materials }: Tables): readonly Sourced[] {
  return [walls, roof].flatMap((part) =>
    part?.rM2KPerW === undefined
      ? (part?.layers ?? []).map(({ materialId }) => rowById(materials, materialId))
      : [],
  );
}

/** Rows that the temperature under the heaters rests on, beside the shell and the air. */
export const heaterRows = ({ rig }: BroodingHeat): readonly Sourced[] => {
  const { table, heat, isAirSchedule, hasLid } = rig;
  const gas = warmsRoom(heat) ? [table.zone] : [table.gasBrooder, table.radiant];
  const rise = { lamp: [table.radiant], gas, plate: [table.plate] }[heat.kind];
  return [
    table.floor,
    ...(hasLid ? [] : [table.openTop]),
    ...(isAirSchedule && heat.kind !== 'plate' ? [] : rise),
    ...(heat.kind === 'lamp' ? [table.lampRule] : []),
    ...(heat.kind === 'lamp' && !isAirSchedule ? [table.clearance] : []),
  ];
};
