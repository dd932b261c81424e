import { dailySeries } from '../explain/daily-series.js';
import { fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { waterByAgeL, waterFormulas, waterHeatFactor } from '../poultry/water.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';

/** Drinking water of every day, and the most that is needed in one. */
export function planWater(context: PlanContext): Found<NumberQuantity> {
  const { life, batch, tables, weather } = context;
  const { species } = life.strain;
  const table =
    tables.water.others.find((each) => each.species === species) ?? tables.water[batch.purpose];
  const byAge = waterByAgeL(table);
  const heat = tables.water.heat;
  const liters = new Float64Array(life.days);
  const lastPrintedDay = Math.ceil(table.points.at(-1)!.ageDays);
  // Hens drink as full-grown birds from the table's last row on; meat birds still grow.
  const outside =
    batch.purpose === 'meat' && lastPrintedDay < life.lastAgeDays
      ? `The water table ends at ${lastPrintedDay} days of age; its last figure is kept, so heavier birds drink more.`
      : undefined;
  let peak = 0;
  for (let i = 0; i < life.days; i++) {
    liters[i] =
      life.aliveAll[i]! * byAge[life.arrivalAgeDays + i]! * waterHeatFactor(heat, weather.maxC[i]!);
    if (liters[peak]! < liters[i]!) peak = i;
  }
  const byDay = dailySeries(
    'water-day',
    'Drinking water in the day',
    'L',
    waterFormulas.water,
    liters,
    [
      { label: 'Birds alive', symbol: 'N', series: 'alive' },
      { label: 'Expected high', symbol: 'T', series: 'day-high' },
      fromTable(heat, 'Rise at 32 °C', heat.rise, 'share', 'r'),
      fromTable(table, 'Printed for air of', table.referenceC, 'degC'),
    ],
    {
      outside: outside
        ? { fromDay: lastPrintedDay - life.arrivalAgeDays + 1, text: outside }
        : undefined,
    },
  );
  const hotC = weather.hotMaxC[peak]!;
  const eachL = byAge[life.arrivalAgeDays + peak]!;
  const cool = life.aliveAll[peak]! * eachL;
  const most = quantity(
    'Most water in one day',
    liters[peak]!,
    'L',
    waterFormulas.water,
    [
      input('Birds alive', life.aliveAll[peak]!, 'count', 'N'),
      fromTable(table, ...(['One bird at that age, cool', eachL * 1000, 'mL', 'v'] as const)),
      fromTable(heat, 'Rise at 32 °C', heat.rise, 'share', 'r'),
      input('Expected high', weather.maxC[peak]!, 'degC', 'T'),
      input('Date', context.dateOf(peak), 'date'),
    ],
    {
      rows: [life.losses],
      outside: lastPrintedDay < life.arrivalAgeDays + peak ? outside : undefined,
      spread: {
        low: cool * waterHeatFactor(heat, weather.maxC[peak]!, heat.riseLow),
        high: cool * waterHeatFactor(heat, hotC, heat.riseHigh),
        because: `${heat.because}; the high end is for a hot day`,
      },
    },
  );
  return found(most, { series: [byDay] });
}
