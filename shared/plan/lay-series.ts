import { dayLengthFormulas } from '../calendar/day-length.js';
import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import { fromFarm, input, type QuantityInput } from '../explain/quantity.js';
import { layFormulas } from '../poultry/lay.js';
import { layConditionFormulas } from '../poultry/lay-conditions.js';
import { layCycleFormulas } from '../poultry/lay-cycles.js';
import type { PlanContext } from './context.js';
import type { LayDays } from './lay-days.js';
import { rowsOn } from './lay-months.js';

/** What the lay of a strain goes by. */
export function curveInputs({ curve, own }: LayDays): QuantityInput[] {
  return [
    input('How they lay', curve.name, 'text'),
    ...(curve.note === undefined ? [] : [input('Note', curve.note, 'text')]),
    input('Flocks lay of the points', curve.flock.value, 'ratio', 'f_flock'),
    ...(own.factor === 1 ? [] : [input('Your hens over the table', own.factor, 'ratio', 'f_own')]),
  ];
}

/** Light, lay by age, light and air, and eggs, day by day of the plan. */
export function laySeries({ life, farm, tables }: PlanContext, lay: LayDays): DailySeries[] {
  const rows = rowsOn(lay, { from: 0, to: life.days });
  const planned = lay.planned.subarray(0, life.days);
  const eggs = planned.map((share, i) => share * lay.hens[i]!);
  const { curve } = lay;
  const byLight = lay.isLit ? lay.byLight.lit : lay.byLight.unlit;
  const lightH = lay.sunH.map((sun) => (lay.isLit ? Math.max(sun, lay.lampH) : sun));
  const upTo = (values: Float64Array): Float64Array => values.subarray(0, life.days);
  return [
    dailySeries(
      'light-hours',
      lay.isLit ? 'Hours of light, lamp included' : 'Hours of daylight',
      'h',
      dayLengthFormulas.dayLength,
      upTo(lightH),
      [
        input('Latitude', `${farm.latitudeDeg}°`, 'text', 'φ'),
        ...(lay.isLit ? [fromFarm('The lamp makes up', lay.lampH, 'h')] : []),
      ],
    ),
    dailySeries(
      'lay-age',
      'Lay at that age',
      'share',
      layCycleFormulas.byAge,
      upTo(lay.byAge),
      curveInputs(lay),
      { rows: [curve, curve.flock] },
    ),
    dailySeries(
      'lay-light',
      'Lay that the light leaves',
      'share',
      layConditionFormulas.light,
      upTo(byLight),
      [
        { label: 'Hours of light', symbol: 'h', series: 'light-hours' },
        input('Felt in the first year', curve.lightShare.value, 'share', 's'),
      ],
      { rows: [tables.light.response, curve.lightShare] },
    ),
    dailySeries(
      'lay-air',
      'Lay that cold and heat leave',
      'share',
      layConditionFormulas.air,
      upTo(lay.byAir),
      [{ label: 'Night low expected', series: 'night-low' }],
      { rows: [tables.laying.air, tables.heat.building] },
    ),
    dailySeries(
      'hen-day',
      'Eggs per hen and day',
      'share',
      layFormulas.henDay,
      planned,
      [
        { label: 'Lay at that age', symbol: 'y_age', series: 'lay-age' },
        { label: 'Light leaves', symbol: 'f_light', series: 'lay-light' },
        { label: 'Cold and heat leave', symbol: 'f_air', series: 'lay-air' },
        input('Your hens over the table', lay.own.factor, 'ratio', 'f_own'),
      ],
      { rows },
    ),
    dailySeries(
      'eggs-day',
      'Eggs in the day',
      'eggs',
      layFormulas.eggs,
      eggs,
      [
        { label: 'Birds alive', symbol: 'N', series: 'alive' },
        { label: 'Eggs per hen and day', symbol: 'y', series: 'hen-day' },
      ],
      { rows: [...rows, life.losses] },
    ),
  ];
}
