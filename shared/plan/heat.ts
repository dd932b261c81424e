import { fromRow, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import { HEAT_CAUTIONS, HEAT_OUT_CAUTIONS, isFrost } from '../farm/heat-caution.js';
import { brooderBox, brooderBoxFormulas, openTopWPerK } from '../poultry/brooder-box.js';
import { brooderHeatFormulas, totalResistanceM2KPerW } from '../poultry/brooder-heat.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { scheduleOf } from './brooding.js';
import { floorHad, floorHadM2 } from './floor-had.js';
import type { PlanContext } from './context.js';
import { found, joined, type Found } from './found.js';
import { circuitPart, type CircuitPart } from './heat-circuit.js';
import { closeOffOf, type CloseOff } from './heat-close-off.js';
import { heatDangers } from './heat-dangers.js';
import {
  broodingHeat,
  daysOfHeat,
  shellRows,
  workingOf,
  type BroodingHeat,
  type DayHeat,
} from './heat-days.js';
import { heatEnds } from './heat-ends.js';
import { energyOf, lastHeatDayOf, type HeatEnergy } from './heat-energy.js';
import { gasNeedsSaid } from './heat-gas-needs.js';
import { heatersOf, type Heaters } from './heat-heaters.js';
import { instructionsOf, type HeatWeekPart } from './heat-instructions.js';
import { coldestNightOf, type NightFacts } from './heat-night.js';
import { heatWeeks, sharesNeeded } from './heat-weeks.js';
import { lampClearance, litterDepthM, type LampClearance } from './lamp-clearance.js';
import { outsideSeries } from './outside-weather.js';

export interface HeatPart extends NightFacts, Heaters, HeatEnergy {
  readonly brooderName: string;
  /** Why gas asks for more heat than lamps would; left out of other heat. */
  readonly gasNeeds?: string;
  readonly conduction: NumberQuantity;
  /** Of a brooder without a lid, on the coldest night. */
  readonly openTop?: NumberQuantity;
  readonly weeks: readonly HeatWeekPart[];
  readonly closeOff?: CloseOff;
  readonly clearance?: LampClearance;
  readonly circuit?: CircuitPart;
}

/**
 * The heat a brooder asks for from arrival until the move, how its heaters are set on cold nights
 * and hot noons, what it uses and costs, whether the heaters there are can give it and the circuit
 * carry them. Undefined, with a note, when no brooder is chosen.
 */
export function planHeat(context: PlanContext): Found<HeatPart | undefined> {
  const { batch, facilities } = context;
  const outdoors = { series: outsideSeries(context) };
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  if (!brooder) {
    return found(undefined, { ...outdoors, issues: context.life.hasBrooder ? [NO_BROODER] : [] });
  }
  const heat = broodingHeat(context, brooder, workingOf(context, brooder));
  const needed = sharesNeeded(heat, brooder.lengthM * brooder.widthM);
  const days = daysOfHeat(heat, brooder.closesOff ? needed : needed.map(() => 1));
  const conduction = conductionOf(context, brooder);
  const night = coldestNightOf(context, brooder, { heat, days }, conduction);
  const heaters = heatersOf(context, brooder, { night, days });
  const headroomM = headroomOf(context, brooder);
  const weeks = heatWeeks(heat, days, lastHeatDayOf(days), headroomM);
  const circuit = circuitPart(
    context,
    brooder,
    // What is out draws nothing: one in its place is none more.
    Math.max(0, heaters.part.toAdd - heaters.part.out),
  );
  const course = { heat, days, weeks };
  const energy = energyOf(context, brooder, course, {
    need: night.need,
    rules: heaters.part.rules,
  });
  const closeOff = closeOffOf(context, brooder, heat, {
    ...{ shares: needed, headroomM },
    plannedKWh: energy.part.energyTotal.value,
  });
  const clearance = lampClearance(context, brooder, weeks, heat.rig.clearanceM);
  const gasNeeds = gasNeedsSaid(context, heat, days);
  const part: HeatPart = {
    brooderName: brooder.name,
    conduction,
    ...(heat.rig.hasLid ? {} : { openTop: openTopOf(brooder, heat, night.worst) }),
    coldestNight: night.coldestNight,
    coldestNightLow: night.coldestNightLow,
    need: night.need,
    ...(gasNeeds === undefined ? {} : { gasNeeds }),
    ...heaters.part,
    weeks: instructionsOf(context, brooder, heat, { weeks, conduction }),
    ...(closeOff ? { closeOff } : {}),
    ...(clearance.part ? { clearance: clearance.part } : {}),
    ...energy.part,
    ...(circuit.part ? { circuit: circuit.part } : {}),
  };
  const { kind } = brooder.heat;
  const nights = context.weather.coldMinC.subarray(0, lastHeatDayOf(days) + 1);
  const cautions = [
    HEAT_CAUTIONS[kind],
    ...(nights.some(isFrost) ? [HEAT_OUT_CAUTIONS[kind]] : []),
  ];
  const issues = [
    ...airScheduleIssues(context, heat),
    ...heatDangers(context, brooder, heat, weeks),
    ...heatEnds(context, brooder, heat, days),
  ];
  return found(part, joined([outdoors, { cautions, issues }, heaters, circuit, clearance, energy]));
}

const NO_BROODER = issue(
  'note',
  'no-brooder',
  'No brooder is chosen, so heat, floor and bedding are not worked out. Choose one, or add it under Buildings and gear.',
);

/** How high a lamp can hang above the bedding of a day: under the lid, where there is one. */
export const headroomOf =
  ({ tables }: PlanContext, { roof, heightM }: Brooder) =>
  (day: number): number =>
    roof ? heightM - litterDepthM(tables.litter, day) : Infinity;

function airScheduleIssues(context: PlanContext, { rig }: BroodingHeat): PlanIssue[] {
  if (!rig.isAirSchedule || rig.heat.kind === 'gas') return [];
  const { name, sources, mark } = scheduleOf(context);
  const text = `“${name}” speaks of the air of a whole heated house. With lamps or plates only a part is warm, and this plan heats all of the brooder instead. Choose a schedule measured at ${context.words.youngOne} height under the heat.`;
  return [issue('act', 'schedule-of-air', text, [{ sources, mark }])];
}

export function conductionOf({ tables }: PlanContext, brooder: Brooder): NumberQuantity {
  const { films, floor } = tables.heat;
  const isInWind = brooder.standsIn === 'outdoors';
  const { walls, roof } = brooder;
  const layers = [
    { label: 'Walls', buildUp: walls },
    ...(roof ? [{ label: 'Lid', buildUp: roof }] : []),
  ];
  return quantity(
    roof ? 'Walls, lid and floor, per degree' : 'Walls and floor, per degree',
    shellWPerK(brooder, tables),
    'WPerK',
    brooderHeatFormulas.conduction,
    [
      fromRow(brooder, 'lengthM', 'Length', brooder.lengthM, 'm'),
      fromRow(brooder, 'widthM', 'Width', brooder.widthM, 'm'),
      fromRow(brooder, 'heightM', 'Height', brooder.heightM, 'm'),
      ...layers.map(({ label, buildUp }) =>
        input(
          `${label}, R-value with air films`,
          totalResistanceM2KPerW(buildUp, tables.materials, films, isInWind),
          'm2KPerW',
          'R',
        ),
      ),
      fromTable(floor, 'Bedded floor', floor.wPerM2K, 'WPerM2K'),
    ],
    { rows: [films, ...shellRows(brooder, tables)] },
  );
}

const shellWPerK = (brooder: Brooder, tables: PlanContext['tables']): number =>
  brooderBox(brooder, { share: 1, isOpen: false }, tables).shellWPerK;

function openTopOf(brooder: Brooder, { rig }: BroodingHeat, worst: DayHeat): NumberQuantity {
  const { openTop } = rig.table;
  const floorM2 = floorHadM2(brooder);
  const deltaK = Math.max(0, worst.insideC - worst.asked.nightC);
  return quantity(
    'Open top, per degree',
    openTopWPerK(openTop, floorM2, deltaK),
    'WPerK',
    brooderBoxFormulas.openTop,
    [
      floorHad(brooder, 'Opening', 'A'),
      input('Air in it warmer by', deltaK, 'K', 'ΔT'),
      fromTable(openTop, 'Radiation', openTop.radiationWPerM2K, 'WPerM2K'),
    ],
  );
}
