import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import { fromTable } from '../explain/quantity.js';
import type { Formula, Sourced } from '../explain/formula.js';
import type { Brooder } from '../farm/facility.js';
import {
  birdSensibleHeatW,
  brooderHeatFormulas,
  freshAirM3PerH,
  ventilationWPerK,
  type LowMidHigh,
} from '../poultry/brooder-heat.js';
import { coolEndC, meanBrooderAirC, underHeaterC } from '../poultry/brooding.js';
import type { HeatTable } from '../tables/bird-tables.js';
import { rowById, type Tables } from '../tables/tables.js';
import { scheduleOf } from './brooding.js';
import type { PlanContext } from './context.js';

const BROODER_AIR: Formula = {
  id: 'brooder-air',
  title: 'Average air in the brooder',
  words:
    'Three tenths of the brooder at the temperature under the heat, the rest at the cool end; with a gas hover the air of the heated room.',
  symbols: 'T_in = T_c + 0.3·(T_h − T_c)',
  sources: ['PLANNING_GUESS'],
  mark: 'estimate',
};
const AROUND: Formula = {
  id: 'around-brooder',
  title: 'Air around the brooder',
  words:
    'Outdoors: the outdoor low. In an unheated building: 3 °C warmer. In a heated room: the room.',
  symbols: 'T_out = T_night + 3 °C',
  sources: ['ARITHMETIC'],
  mark: 'computed',
};
export const heatSeriesFormulas = { brooderAir: BROODER_AIR, around: AROUND };
/** What the brooder asks of its heat source on one day. */
export interface DayHeat {
  readonly need: LowMidHigh;
  readonly meanNeedW: number;
  readonly insideC: number;
  readonly nightC: number;
  readonly freshAir: LowMidHigh;
  readonly birds: LowMidHigh;
}

type HeatContext = Pick<
  PlanContext,
  'batch' | 'life' | 'tables' | 'farm' | 'weather' | 'brooderDays'
>;

/** Heat of every day from arrival until the move or the end of the schedule. */
export function daysOfHeat(context: HeatContext, brooder: Brooder, wPerK: number): DayHeat[] {
  const { life, tables, farm, weather, brooderDays } = context;
  const { heat: table } = tables;
  const schedule = scheduleOf(context);
  const result: DayHeat[] = [];
  for (let i = 0; i < brooderDays; i++) {
    const age = life.arrivalAgeDays + i;
    const heaterC = underHeaterC(schedule, age);
    if (heaterC === undefined) break;
    const insideC = meanBrooderAirC(table.zone, heaterC, brooder.heat.kind);
    const around = (outsideC: number): number => surroundingsC(brooder, outsideC, table);
    const nightC = around(weather.coldMinC[i]!);
    const meanC = around((weather.minC[i]! + weather.maxC[i]!) / 2);
    const weightKg = life.meanWeightKg[i]!;
    const birdsAlive = life.aliveAll[i]!;
    const freshAir = freshAirM3PerH(table.ventilation, {
      birds: birdsAlive,
      weightKg,
      unventedGas: brooder.heat.kind === 'gas',
    });
    const birds =
      table.birds.creditFromDay <= age
        ? times(birdSensibleHeatW(table.birds, weightKg, insideC), birdsAlive)
        : NO_HEAT;
    const loss = (airM3PerH: number, inC: number, outC: number): number =>
      Math.max(0, inC - outC) * (wPerK + ventilationWPerK(airM3PerH, farm.elevationM));
    result.push({
      insideC,
      nightC,
      freshAir,
      birds,
      meanNeedW: Math.max(0, loss(freshAir.mid, insideC, meanC) - birds.mid),
      need: {
        low: Math.max(0, loss(freshAir.low, coolEndC(table.zone, heaterC), nightC) - birds.high),
        mid: Math.max(0, loss(freshAir.mid, insideC, nightC) - birds.mid),
        high: Math.max(0, loss(freshAir.high, heaterC, nightC) - birds.low),
      },
    });
  }
  return result;
}

const NO_HEAT: LowMidHigh = { low: 0, mid: 0, high: 0 };
const times = (range: LowMidHigh, factor: number): LowMidHigh => ({
  low: range.low * factor,
  mid: range.mid * factor,
  high: range.high * factor,
});

function surroundingsC(brooder: Brooder, outsideC: number, table: HeatTable): number {
  if (brooder.standsIn === 'heated-room') return brooder.roomC ?? table.heatedRoom.airC;
  return brooder.standsIn === 'outdoors' ? outsideC : outsideC + table.building.warmerThanOutsideK;
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

/**
 * Energy of one day: by the thermostat, or with whatever the night needs burning day and night.
 *
 * @param heaters how many there are, or are needed when that is more
 */
export function dayEnergyKWh(day: DayHeat, heat: Brooder['heat'], heaters: number): number {
  if (heat.thermostat) return (24 * Math.min(day.meanNeedW, heaters * heat.wattsEach)) / 1000;
  const on = Math.min(heaters, Math.ceil(day.need.mid / heat.wattsEach - 1e-9));
  return (24 * on * heat.wattsEach) / 1000;
}

/** Air in and around the brooder, heat needed and energy used, by day. */
export function heatSeries(
  { tables, life }: Pick<PlanContext, 'tables' | 'life'>,
  brooder: Brooder,
  days: readonly DayHeat[],
  energyKWh: readonly number[],
): DailySeries[] {
  const { birds, ventilation, films } = tables.heat;
  const rows = [
    ...[birds, ventilation, films, life.losses],
    ...life.weightRows,
    ...shellRows(brooder, tables),
  ];
  const nightInputs = [
    { label: 'Air in the brooder, average', symbol: 'T_in', series: 'brooder-air' },
    { label: 'Air around the brooder on a cold night', symbol: 'T_out', series: 'around-brooder' },
  ];
  return [
    dailySeries(
      'brooder-air',
      'Air in the brooder, average',
      'degC',
      BROODER_AIR,
      days.map((d) => d.insideC),
      [
        { label: 'Under the heat', symbol: 'T_h', series: 'under-heater' },
        fromTable(
          tables.heat.zone,
          'Share of the floor under the heat',
          tables.heat.zone.warmShare,
          'share',
        ),
      ],
    ),
    dailySeries(
      'around-brooder',
      'Air around the brooder, cold night',
      'degC',
      AROUND,
      days.map((d) => d.nightC),
      [{ label: 'Outdoor cold night', series: 'night-cold' }],
      { rows: surroundingRows(brooder, tables) },
    ),
    dailySeries(
      'heat-need',
      'Heat needed on a cold night',
      'W',
      brooderHeatFormulas.need,
      days.map((d) => d.need.mid),
      nightInputs,
      { rows },
    ),
    dailySeries('energy-day', 'Energy in the day', 'kWh', brooderHeatFormulas.energy, energyKWh, [
      { label: 'Heat needed on a cold night', symbol: 'Q', series: 'heat-need' },
    ]),
  ];
}
