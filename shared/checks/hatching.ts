import { underHeaterC } from '../poultry/brooding.js';
import { birdGrowth, type BirdGrowth } from '../poultry/growth.js';
import { storageLossShare } from '../poultry/hatch.js';
import { survivingShare } from '../poultry/losses.js';
import { spaceRowAt } from '../poultry/space.js';
import { waterByAgeL } from '../poultry/water.js';
import type { BirdSex, ManureOfBirds } from '../tables/bird-tables.js';
import { tablesForKind } from '../tables/for-kind.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const speciesOf = ({ tables, text }: Given) => rowById(tables.hatching.species, text('species'));

const growthOf = ({ tables, text }: Given, sex: BirdSex): BirdGrowth =>
  birdGrowth(rowById(tables.growthTables, text('table')), sex);

/** Average of both sexes, as many of each. */
const meanOf = (given: Given, of: 'weightKg' | 'cumulativeFeedKg'): number => {
  const day = given.number('day');
  return (growthOf(given, 'male')[of][day]! + growthOf(given, 'female')[of][day]!) / 2;
};

function lostBy({ tables, text, number }: Given): number {
  const row = rowById(tables.losses, text('losses'));
  const rates = {
    firstWeekShare: row.firstWeekPercent / 100,
    laterShare: row.laterPercent / 100,
    laterToDay: row.laterToDay,
    layYearShare: 0,
  };
  return 1 - survivingShare(rates, number('day'));
}

function waterADay({ tables, text, number }: Given): number {
  const table = tables.water.others.find(({ species }) => species === text('species'))!;
  return 1000 * waterByAgeL(table)[number('day')]!;
}

const manureOf = ({ tables, text }: Given): ManureOfBirds =>
  tablesForKind(tables, text('species')).manure.meat;

/** Eggs that a household sets, and birds that are no chickens. */
export const hatchingChecks: Topic = {
  title: 'Own eggs, ducks and turkeys',
  by: {
    'incubation-days': (given) => speciesOf(given).incubationDays,
    'lockdown-day': (given) => speciesOf(given).lockdownDay,
    'incubator-air': ({ tables, text }) => rowById(tables.hatching.incubators, text('kind')).airC,
    'hatch-share': (given) => {
      const species = speciesOf(given);
      return given.text('way') === 'hen' ? species.hen!.share : species.incubator.share;
    },
    'lost-by-keeping': ({ tables, number }) =>
      storageLossShare(tables.hatching.storage, number('days')),
    // The eggs of one day more are as many more lost.
    'lost-of-the-oldest': ({ tables: { hatching }, number }) => {
      const lostUpTo = (days: number): number => days * storageLossShare(hatching.storage, days);
      return lostUpTo(number('days')) - lostUpTo(number('days') - 1);
    },
    'egg-weight-loss': (given) => speciesOf(given).weightLoss.share,
    weight: (given) => growthOf(given, given.text('sex') as BirdSex).weightKg[given.number('day')]!,
    'mean-weight': (given) => meanOf(given, 'weightKg'),
    'mean-feed': (given) => meanOf(given, 'cumulativeFeedKg'),
    conversion: (given) => meanOf(given, 'cumulativeFeedKg') / meanOf(given, 'weightKg'),
    'lost-by': lostBy,
    'water-a-day': waterADay,
    'under-heat': ({ tables, text, number }) =>
      underHeaterC(rowById(tables.broodingSchedules, text('schedule')), number('day'))!,
    'brooder-floor': ({ tables, text, number }) =>
      spaceRowAt(rowById(tables.space.brooder, text('standard')).rows, number('day')).floorM2,
    'manure-n': (given) => 1000 * manureOf(given).nKgPerDayPerKgLive,
    'manure-p': (given) => 1000 * manureOf(given).pKgPerDayPerKgLive,
    dressed: ({ tables, text }) => rowById(tables.processing.dressing, text('id')).share,
  },
};
