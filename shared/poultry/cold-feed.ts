import type { Formula } from '../explain/formula.js';
import type { ColdFeedRow } from '../tables/night-table.js';

export const coldFeedFormulas = {
  coldNight: {
    id: 'low-of-cold-night',
    title: 'Low of a night that is too cold',
    words:
      'Average low of those nights that are colder than birds of that age stand: the part of a bell curve below a limit has this average. Taken on the night of the first ones that is most often too cold.',
    symbols: 'T_cold = T_night − SD·φ(z) ÷ Φ(z), z = (T_rule − T_night) ÷ SD',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  feed: {
    id: 'feed-of-cold-night',
    title: 'Extra feed of one cold night',
    words:
      'Below the lower critical temperature a bird burns 2.65 kcal for every degree and day on each kilogram^¾ of its weight (fasting male broilers, single, still and dry). Counted for the degrees by which a cold night lies below the average one, over the hours of the night. Huddled birds need less, wet or windblown ones more.',
    symbols: 'F = N·2.65·m^0.75·(min(CT, T_night) − T_cold)·h ÷ 24 ÷ E',
    sources: ['BROILER_FASTING_HEAT'],
    mark: 'estimate',
  },
  money: {
    id: 'money-of-cold-night',
    title: 'Extra feed of one cold night, in money',
    words: 'Extra feed times the price of a kilogram, rounded once to the smallest coin.',
    symbols: 'C = F·price',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  heat: {
    id: 'heat-of-cold-night',
    title: 'One night of heat outdoors',
    words:
      'Watts of the heaters of the brooder over the hours from sunset to sunrise, times the price of a kWh. Only with a safe cable and guards, and never where birds or wind can reach the lamp.',
    symbols: 'C = P·h·price ÷ 1000',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Lower critical temperature of a bird, °C: below it, it burns feed to stay warm.
 *
 * Range: 0.2 to 3.3 kg, male meat birds, single and still. Source: maintenance of broilers by weight
 * and critical temperature, 76 groups (abstract).
 *
 * @param weightKg live weight, kg, above 0
 */
export const lowerCriticalC = (row: ColdFeedRow, weightKg: number): number =>
  row.criticalBaseC + row.criticalRiseC * Math.exp(-row.criticalPerKg * weightKg);

/**
 * Energy that one bird burns on top for hours below its lower critical temperature, kcal.
 *
 * @param degrees degrees colder than it would be else, all of them below the critical temperature
 */
export const coldEnergyKcal = (
  row: ColdFeedRow,
  { weightKg, degrees, hours }: { weightKg: number; degrees: number; hours: number },
): number => (row.kcalPerDegreeDay * weightKg ** 0.75 * degrees * hours) / 24;
