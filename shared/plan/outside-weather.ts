import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import type { Formula } from '../explain/formula.js';
import { input, type QuantityInput } from '../explain/quantity.js';
import type { HeatTable } from '../tables/heat-tables.js';
import type { Climate } from '../weather/climate.js';
import type { PlanContext } from './context.js';

export const weatherFormulas = {
  coldNight: {
    id: 'cold-night',
    title: 'Coldest night to expect',
    words:
      'The low that one night in ten falls below, at that time of year in the years on record; or the average low less 6 °C when only monthly means are known.',
    symbols: 'T = P10(lows), or T_mean − 6 °C',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  nightLow: {
    id: 'expected-night-low',
    title: 'Expected night low',
    words: 'Average of the lows at that time of year; the forecast where there is one.',
    symbols: 'T = mean(T_min)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  dayHigh: {
    id: 'expected-day-high',
    title: 'Expected day high',
    words: 'Average of the highs at that time of year; the forecast where there is one.',
    symbols: 'T = mean(T_max)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  dayHot: {
    id: 'hot-day',
    title: 'Hottest day to expect',
    words:
      'The high that one day in ten comes above, at that time of year in the years on record; or the average high plus 6 °C when only monthly means are known.',
    symbols: 'T = P90(highs), or T_mean + 6 °C',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Where the weather of a number comes from; one that was estimated makes it no better. */
export const weatherUsed = ({ label, isEstimate = false }: Climate): QuantityInput => ({
  ...input('Weather used', label, 'text'),
  ...(isEstimate ? { mark: 'estimate' as const } : {}),
});

/** The nights and days to expect outdoors, as daily series. */
export function outsideSeries(context: PlanContext): DailySeries[] {
  const { weather, climate } = context;
  const used = [weatherUsed(climate), input('Years on record', climate.years, 'count')];
  return [
    dailySeries(
      'night-low',
      'Expected night low',
      'degC',
      weatherFormulas.nightLow,
      weather.minC,
      used,
    ),
    dailySeries(
      'night-cold',
      'Cold night',
      'degC',
      weatherFormulas.coldNight,
      weather.coldMinC,
      used,
      { rows: coldNightRows(context) },
    ),
    dailySeries(
      'day-high',
      'Expected day high',
      'degC',
      weatherFormulas.dayHigh,
      weather.maxC,
      used,
    ),
    dailySeries('day-hot', 'Hot day', 'degC', weatherFormulas.dayHot, weather.hotMaxC, used, {
      rows: coldNightRows(context),
    }),
  ];
}

/** What a cold night rests on beside the record: the usual margin, where only means are known. */
export const coldNightRows = ({
  climate,
  tables,
}: PlanContext): readonly HeatTable['coldNightMarginK'][] =>
  climate.way === 'monthly-means' ? [tables.heat.coldNightMarginK] : [];
