import type { Formula } from '../explain/formula.js';
import type { Round } from '../tables/task-template.js';

export const refillFormulas = {
  holds: {
    id: 'drinkers-feeders-hold',
    title: 'What drinkers or feeders hold',
    words:
      'All of them together, full: your own figure; else what is usual for so many birds of that age.',
    symbols: 'H = N·h(age)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  hotWater: {
    id: 'flock-water-hot-day',
    title: 'Drinking water of the flock on a hot day',
    words:
      'Drinking water of that day with its high at that of the hottest day to expect: one day in ten is hotter.',
    symbols: 'V_hot = V(T_hot)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  share: {
    id: 'drinkers-feeders-last',
    title: 'How long full drinkers or feeders last',
    words:
      'What they hold, over what the birds drink on a hot day, or eat in a day. Birds drink and eat while it is light, so that half a day’s water lasts for half of the daylight; under brooding light around the clock.',
    symbols: 's = H ÷ V_hot;  t = s·(hours of light)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Hours that full drinkers or feeders last from the morning round on, while birds drink and eat;
 * Infinity where they hold a day's need or more.
 *
 * @param share of a day's need that they hold, 0 or more
 * @param lightH hours of the day in which birds drink and eat, 0 to 24
 */
export const lastsByDayH = (share: number, lightH: number): number =>
  1 <= share ? Infinity : share * lightH;

/** Rounds of the day on which they are filled at least; rounds of one half of the day apart lie `apartH`. */
export function roundsToFill(lastsH: number, apartH: number): readonly Round[] {
  if (lastsH === Infinity) return ['morning'];
  return apartH <= lastsH ? ['morning', 'evening'] : ['morning', 'noon', 'evening'];
}

/** “a day and a half” of what they hold, 1 day or more. */
export function daysHeldSaid(days: number): string {
  if (days < 1.4) return 'a day';
  if (days < 1.9) return 'a day and a half';
  const whole = Math.floor(days + 0.1);
  return 7 < whole ? 'more than a week' : `${NUMBERS[whole] ?? whole} days`;
}

const NUMBERS = ['', '', 'two', 'three', 'four', 'five', 'six', 'seven'];
