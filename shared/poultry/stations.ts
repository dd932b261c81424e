import type { Formula } from '../explain/formula.js';

export const stationFormulas = {
  birdsAnHour: {
    id: 'birds-an-hour',
    title: 'Birds an hour',
    words:
      'The slowest decides: hands over what a bird takes one of them, from killing to the ice, or what goes through cones, scalder or plucker in an hour.',
    symbols: 'r = min(hands ÷ h_bird, n ÷ t)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Birds that go through a station in an hour.
 *
 * @param places birds at once, 1 or more; `minutes` each time, above 0
 */
export const stationPerHour = (places: number, minutes: number): number => (60 * places) / minutes;
