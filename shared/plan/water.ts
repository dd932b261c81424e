import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import {
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { Formula, Sourced } from '../explain/formula.js';
import { waterByAgeL, waterFormulas, waterHeatFactor } from '../poultry/water.js';
import type { WaterTable } from '../tables/bird-tables.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { withoutThoseGone } from './still-here.js';

/** Water in cool air, and what it is reckoned by. */
interface CoolWater {
  readonly formula: Formula;
  /** Of the flock, by day after arrival. */
  readonly liters: Float64Array;
  /** Least and most of what sources give, over what is planned with. */
  readonly low: number;
  readonly high: number;
  readonly because: string;
  readonly rows: readonly Sourced[];
  readonly seriesInputs: DailySeries['inputs'];
  readonly inputsOf: (day: number) => readonly QuantityInput[];
}

/** Drinking water of every day, and the most that is needed in one. */
export function planWater(context: PlanContext): Found<NumberQuantity> {
  const { life, tables, weather } = context;
  const heat = tables.water.heat;
  const cool = coolWaterOf(context);
  const liters = cool.liters.map((L, i) => L * waterHeatFactor(heat, weather.maxC[i]!));
  const peak = liters.reduce((most, L, i) => (liters[most]! < L ? i : most), 0);
  const byDay = dailySeries(
    'water-day',
    'Drinking water in the day',
    'L',
    cool.formula,
    liters,
    [
      ...cool.seriesInputs,
      { label: 'Expected high', symbol: 'T', series: 'day-high' },
      fromTable(heat, 'Rise at 32 °C', heat.rise, 'share', 'r'),
    ],
    { rows: cool.rows },
  );
  const coolL = cool.liters[peak]!;
  const most = quantity(
    'Most water in one day',
    liters[peak]!,
    'L',
    cool.formula,
    [
      ...cool.inputsOf(peak),
      fromTable(heat, 'Rise at 32 °C', heat.rise, 'share', 'r'),
      input('Expected high', weather.maxC[peak]!, 'degC', 'T'),
      input('Date', context.dateOf(peak), 'date'),
    ],
    {
      rows: [...cool.rows, life.losses],
      spread: {
        low: coolL * cool.low * waterHeatFactor(heat, weather.maxC[peak]!, heat.riseLow),
        high: coolL * cool.high * waterHeatFactor(heat, weather.hotMaxC[peak]!, heat.riseHigh),
        because: `${cool.because}${heat.because}; the high end is for a hot day`,
      },
    },
  );
  return found(most, { series: [byDay] });
}

/** Drinking water of the flock on a hot day of each date, L, by day after arrival. */
export function hotWaterL(context: PlanContext): Float64Array {
  const { tables, weather } = context;
  return coolWaterOf(context).liters.map(
    (L, i) => L * waterHeatFactor(tables.water.heat, weather.hotMaxC[i]!),
  );
}

function coolWaterOf(context: PlanContext): CoolWater {
  const { tables, life, batch } = context;
  const other = tables.water.others.find(({ species }) => species === life.strain.species);
  const isFed = other === undefined && batch.purpose === 'meat';
  return isFed ? ofMeatBirds(context) : byAgeOf(context, other ?? tables.water.layers);
}

/** Meat birds drink with what they eat. */
function ofMeatBirds(context: PlanContext): CoolWater {
  const { life, tables } = context;
  const { meat } = tables.water;
  const feedKg = withoutThoseGone(context, life.coolFeedKg);
  const ratio = fromTable(meat, 'Water to feed, cool', meat.ratio, 'ratio', 'v');
  return {
    formula: waterFormulas.withFeed,
    liters: feedKg.map((kg) => kg * meat.ratio),
    low: meat.low / meat.ratio,
    high: meat.high / meat.ratio,
    because: meat.because ? `${meat.because}; ` : '',
    rows: life.feedRows,
    seriesInputs: [{ label: 'Feed in the day', symbol: 'F', series: 'feed-day' }, ratio],
    inputsOf: (day) => [input('Eaten, but for the heat', feedKg[day]!, 'kg', 'F'), ratio],
  };
}

/** Hens, ducks and turkeys by age: a full-grown bird goes on as in the table's last row. */
function byAgeOf(context: PlanContext, table: WaterTable): CoolWater {
  const { life } = context;
  const alive = withoutThoseGone(context, life.aliveAll);
  const byAge = waterByAgeL(table);
  const eachL = (day: number): number =>
    byAge[Math.min(byAge.length - 1, life.arrivalAgeDays + day)]!;
  const reference = fromTable(table, 'Printed for air of', table.referenceC, 'degC');
  return {
    formula: waterFormulas.water,
    liters: alive.map((birds, i) => birds * eachL(i)),
    low: 1,
    high: 1,
    because: '',
    rows: [],
    seriesInputs: [{ label: 'Birds alive', symbol: 'N', series: 'alive' }, reference],
    inputsOf: (day) => [
      input('Birds alive', alive[day]!, 'count', 'N'),
      fromTable(table, ...(['One bird at that age, cool', eachL(day) * 1000, 'mL', 'v'] as const)),
    ],
  };
}
