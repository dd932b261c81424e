import type { Formula } from '../explain/formula.js';
import { monotoneCubic } from '../maths/monotone-cubic.js';
import { LAST_AGE_DAYS } from './growth.js';
import type { WaterHeatRise, WaterTable } from '../tables/bird-tables.js';

export const waterFormulas = {
  water: {
    id: 'flock-water-day',
    title: 'Drinking water of the flock in a day',
    words:
      'Printed water of one bird at that age, times the birds alive; above 21 °C (70 °F) it rises evenly to 40 % more at 32 °C (90 °F); of turkeys from 20 °C (68 °F) on, to 85 % more.',
    symbols: 'V = N·v(t)·[1 + r·(T − 21) ÷ (32 − 21)] for T > 21 °C',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  withFeed: {
    id: 'flock-water-with-feed',
    title: 'Drinking water of meat birds in a day',
    words:
      'So many times the feed by weight, at every age; above 21 °C (70 °F) it rises evenly to 40 % more at 32 °C (90 °F). Heat takes the appetite, not the thirst: the feed is what they would eat but for it.',
    symbols: 'V = v·F·[1 + r·(T − 21) ÷ (32 − 21)] for T > 21 °C',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Steepest rise that is planned with: beyond 43 °C no table has a figure. */
const HOTTEST_C = 43;

/** Factor on drinking water at an air temperature, 1 up to 21 °C. */
export function waterHeatFactor(heat: WaterHeatRise, airC: number, rise = heat.rise): number {
  const warm = Math.min(airC, HOTTEST_C) - heat.fromC;
  return warm <= 0 ? 1 : 1 + (rise * warm) / (heat.atC - heat.fromC);
}

const cache = new WeakMap<WaterTable, Float64Array>();

/** Drinking water of one bird at cool temperatures, L, index = age in days. */
export function waterByAgeL(table: WaterTable): Float64Array {
  let byAge = cache.get(table);
  if (!byAge) {
    const curve = monotoneCubic(
      table.points.map((p) => p.ageDays),
      table.points.map((p) => p.mLPerDay / 1000),
    );
    byAge = Float64Array.from({ length: LAST_AGE_DAYS + 1 }, (_, day) => curve(day));
    cache.set(table, byAge);
  }
  return byAge;
}
