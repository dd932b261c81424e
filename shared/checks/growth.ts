import { birdGrowth } from '../poultry/growth.js';
import type { BirdSex } from '../tables/bird-tables.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const growthOf = ({ tables, text }: Given) =>
  birdGrowth(rowById(tables.growthTables, text('table')), text('sex') as BirdSex);

/** Weight and feed of single birds, as the days of a plan are made of them. */
export const growthChecks: Topic = {
  title: 'How birds grow',
  by: {
    'weight-at-day': (given) => growthOf(given).weightKg[given.number('day')]!,
  },
};
