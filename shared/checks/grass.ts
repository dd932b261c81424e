import { hayNeededKg } from '../pasture/hay.js';
import { paddockAreaM2, rectangleFenceM } from '../pasture/sizing.js';
import type { Productivity, Stand } from '../farm/paddock.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const forageOf = ({ tables, text }: Given) => rowById(tables.forages, text('forage'));
const monthsOf = (given: Given): readonly number[] =>
  forageOf(given).growthKgPerHaDay![given.text('productivity') as Productivity];
const yieldOf = (months: readonly number[]): number =>
  months.reduce((sum, kg, month) => sum + kg * MONTH_DAYS[month]!, 0);

/** Growth, heights, areas, fences and hay. */
export const grassChecks: Topic = {
  title: 'Grass, fences and hay',
  by: {
    'growth-of-month': (given) => monthsOf(given)[given.number('month') - 1]!,
    'growth-of-year': (given) => yieldOf(monthsOf(given)),
    'share-of-months': (given) => {
      const months = monthsOf(given);
      const from = given.number('fromMonth') - 1;
      const kept = months.map((kg, month) =>
        from <= month && month < given.number('toMonth') ? kg : 0,
      );
      return yieldOf(kept) / yieldOf(months);
    },
    'mass-of-height': (given) => forageOf(given).massKgPerHaCm[given.text('stand') as Stand].value,
    'ready-height': (given) => forageOf(given).heights.readyHeightCm,
    'paddock-area': ({ tables, number }) =>
      paddockAreaM2({
        demandKgPerDay: number('demandKgPerDay'),
        days: number('days'),
        availableKgPerHa: number('availableKgPerHa'),
        harvestShare: tables.pasture.utilisation.byStayDays[number('days') - 1]!,
      }),
    'fence-over-square': ({ number }) =>
      rectangleFenceM(10_000, number('longToShort')) / rectangleFenceM(10_000, 1) - 1,
    'hay-to-feed': ({ number, numberOr }) =>
      hayNeededKg({
        dryMatterKg: number('dryMatterKg'),
        dryMatterShare: number('dryMatterShare'),
        storeLoss: numberOr('storeLoss', 0),
        feedLoss: numberOr('feedLoss', 0),
      }),
  },
};
