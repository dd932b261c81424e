import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import type { Formula } from '../explain/formula.js';
import { input } from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { brooderHeatFormulas } from '../poultry/brooder-heat.js';
import type { PlanContext } from './context.js';
import {
  heaterRows,
  shellRows,
  surroundingRows,
  type BroodingHeat,
  type DayHeat,
} from './heat-days.js';

export const heatSeriesFormulas = {
  brooderAir: {
    id: 'brooder-air',
    title: 'Air the brooder needs',
    words:
      'What is wanted under the heat, less what the rays of a lamp at its least height add for a bird below it, what a gas brooder adds straight below it while it burns, or the little that a heater for the room adds to its floor. With plates, which warm by touch, the least for the cool end.',
    symbols: 'T_in = T_h − rise',
    sources: ['UGA_RADIANT_FLUX', 'UGA_RADIANT_COVERAGE', 'UGA_RADIANT'],
    mark: 'estimate',
  },
  around: {
    id: 'around-brooder',
    title: 'Air around the brooder',
    words:
      'Outdoors: the outdoor low. In an unheated building: 3 °C warmer at night, as warm as outdoors by day. In a heated room: the room.',
    symbols: 'T_out = T_night + 3 °C',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Air in and around the brooder, heat needed and energy used, by day. */
export function heatSeries(
  { tables, life }: Pick<PlanContext, 'tables' | 'life'>,
  brooder: Brooder,
  heat: BroodingHeat,
  days: readonly DayHeat[],
  energyKWh: readonly number[],
): DailySeries[] {
  const { birds, ventilation, films } = tables.heat;
  const warmRows = heaterRows(heat);
  const rows = [
    ...[birds, ventilation, films, life.losses],
    ...life.weightRows,
    ...shellRows(brooder, tables),
    ...warmRows,
  ];
  const around = { rows: surroundingRows(brooder, tables) };
  return [
    dailySeries(
      'brooder-air',
      'Air the brooder needs',
      'degC',
      heatSeriesFormulas.brooderAir,
      days.map((d) => d.insideC),
      [{ label: 'Under the heat', symbol: 'T_h', series: 'under-heater' }],
      { rows: warmRows },
    ),
    dailySeries(
      'around-brooder',
      'Air around the brooder, cold night',
      'degC',
      heatSeriesFormulas.around,
      days.map((d) => d.asked.nightC),
      [{ label: 'Outdoor cold night', series: 'night-cold' }],
      around,
    ),
    dailySeries(
      'around-noon',
      'Air around the brooder, hot day',
      'degC',
      heatSeriesFormulas.around,
      days.map((d) => d.asked.noonC),
      [{ label: 'Outdoor hot day', series: 'day-hot' }],
      around,
    ),
    dailySeries(
      'heat-need',
      'Heat needed on a cold night',
      'W',
      brooderHeatFormulas.need,
      days.map((d) => d.need.mid),
      [
        { label: 'Air the brooder needs', symbol: 'T_in', series: 'brooder-air' },
        { label: 'Air around it on a cold night', symbol: 'T_out', series: 'around-brooder' },
      ],
      { rows },
    ),
    dailySeries(
      'energy-day',
      'Energy in the day',
      'kWh',
      brooderHeatFormulas.energy,
      energyKWh,
      [
        { label: 'Heat needed on a cold night', symbol: 'Q', series: 'heat-need' },
        input('Thermostat', heat.rig.heat.thermostat ? 'yes' : 'no', 'text'),
      ],
      { rows },
    ),
  ];
}
