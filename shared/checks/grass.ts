import { hayNeededKg } from '../pasture/hay.js';
import { paddockAreaM2, rectangleFenceM } from '../pasture/sizing.js';
import type { Stand } from '../farm/paddock.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const forageOf = ({ tables, text }: Given) => rowById(tables.forages, text('forage'));
/** Heights, areas, fences and hay. */
export const grassChecks: Topic = {
  title: 'Grass, fences and hay',
  by: {
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
