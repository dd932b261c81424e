import { temperatureHumidityIndex } from '../pasture/cattle-heat.js';
import { cattleWaterL } from '../pasture/cattle-water.js';
import { carriedKg } from '../pasture/carried.js';
import { hayNeededKg } from '../pasture/hay.js';
import { calvingDue } from '../pasture/gestation.js';
import { herdDays } from '../pasture/herd-demand.js';
import { animalUnits, intakeKg } from '../pasture/intake.js';
import { daysBetween } from '../calendar/plain-date.js';
import { rowById } from '../tables/tables.js';
import type { Given, Topic } from './given.js';

const classOf = ({ tables, text }: Given) => rowById(tables.cattle.classes, text('class'));

/** One head on one mild day of May, as a herd's plan sees her. */
function dayOf(given: Given) {
  const group = { classId: given.text('class'), head: 1, weightKg: given.number('weightKg') };
  return herdDays({ id: 'h', name: 'Cattle', groups: [group] }, given.tables, {
    first: '2027-05-01',
    days: 1,
    from: 0,
    minC: [8],
    maxC: [18],
    hotC: [25],
    energyMcalPerKg: [1.3],
  });
}

/** What cattle eat, drink, leave and stand. */
export const cattleChecks: Topic = {
  title: 'Cattle',
  by: {
    intake: (given) =>
      intakeKg(classOf(given), {
        weightKg: given.number('weightKg'),
        milkKg: given.numberOr('milkKg', 0),
        energyMcalPerKg: given.numberOr('energyMcalPerKg', 1.3),
        weekOfLactation: given.numberOr('weekOfLactation', 12),
      }),
    'intake-share': (given) =>
      intakeKg(classOf(given), {
        weightKg: given.number('weightKg'),
        milkKg: given.numberOr('milkKg', 0),
        energyMcalPerKg: given.number('energyMcalPerKg'),
        weekOfLactation: 12,
      }) / given.number('weightKg'),
    'animal-units': ({ tables, number }) =>
      animalUnits(tables.cattle.animalUnits.perKgLive, number('weightKg')),
    'water-of-day': (given) =>
      cattleWaterL(given.tables.cattleWater, classOf(given), {
        maxC: given.number('airC'),
        minC: given.numberOr('minC', given.number('airC')),
        weightKg: given.number('weightKg'),
        dryMatterKg: given.numberOr('dryMatterKg', 0),
        milkKg: given.numberOr('milkKg', 0),
      }),
    'milk-on-grass': (given) =>
      carriedKg(classOf(given), {
        weightKg: given.number('weightKg'),
        milkKg: given.number('milkKg'),
        weekOfLactation: given.numberOr('weekOfLactation', 8),
        digestibleShare: given.number('digestibleShare'),
        ...{ grainKg: 0, grainSparesKg: 0 },
      })!.kg,
    'hay-of-cow-day': (given) => {
      const { hay } = given.tables.pasture;
      const feeding = rowById(hay.feeding, given.text('feeding'));
      const { demandKg } = herdDays(
        {
          id: 'h',
          name: 'Cattle',
          groups: [{ classId: given.text('class'), head: 1, weightKg: given.number('weightKg') }],
        },
        given.tables,
        {
          ...{ first: '2027-01-15', days: 1, from: 0, minC: [-6], maxC: [2], hotC: [2] },
          energyMcalPerKg: [rowById(given.tables.forages, 'mixed').energyMcalPerKg.value],
        },
      );
      return given.numberOr('asDry', 0) === 1
        ? demandKg[0]!
        : hayNeededKg({
            ...{ dryMatterKg: demandKg[0]!, dryMatterShare: hay.dryMatterShare },
            ...{ storeLoss: 0, feedLoss: feeding.loss },
          });
    },
    'nitrogen-of-day': (given) => dayOf(given).nitrogenKg[0]!,
    'phosphorus-of-day': (given) => dayOf(given).phosphorusKg[0]!,
    'heat-and-humidity': ({ number }) =>
      temperatureHumidityIndex(number('airC'), number('humidity')),
    'days-in-calf': ({ tables, textOr }) =>
      daysBetween(
        '2027-06-01',
        calvingDue(tables.gestation, '2027-06-01', textOr('breed', 'all')).due,
      ),
  },
};
