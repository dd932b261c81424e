import { paddockAreaM2 } from '../pasture/sizing.js';
import type { Stand } from '../farm/paddock.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const forageOf = ({ tables, text }: Given) => rowById(tables.forages, text('forage'));
/** Heights and areas. */
export const grassChecks: Topic = {
  title: 'Grass',
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
  },
};
