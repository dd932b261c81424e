import type { Formula } from '../explain/formula.js';
import type { SpaceRow } from '../tables/bird-tables.js';

export const spaceFormulas = {
  floor: {
    id: 'floor-need',
    title: 'Floor the birds need',
    words: 'Floor for one bird of that age in the chosen standard, times the birds alive.',
    symbols: 'A = N·a(age)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  limit: {
    id: 'floor-a-bird',
    title: 'Floor a bird',
    words:
      'Floor for one bird of that age: in the brooder of the chosen standard, after the move the household’s own figure, else what is usual for its kind. Meat birds on their last day have no less than keeps their weight on the floor within what welfare standards allow.',
    symbols: 'a = max(a(age), W ÷ d)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  fits: {
    id: 'birds-that-fit',
    title: 'Birds that fit',
    words: 'The floor you have, divided by the floor of one bird. Rounded down.',
    symbols: 'N = ⌊A ÷ a⌋',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  edge: {
    id: 'edge-need',
    title: 'Feeder or drinker edge the birds need',
    words: 'Edge for one bird of that age, times the birds alive. Both sides of a trough count.',
    symbols: 'L = N·l(age)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  density: {
    id: 'stocking-density',
    title: 'Stocking density at the end',
    words: 'Live weight of all birds divided by the floor they share.',
    symbols: 'd = N·W ÷ A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  runsOut: {
    id: 'space-runs-out',
    title: 'Day on which it runs out',
    words: 'First day on which the need is larger than what there is.',
    symbols: 'min{t: need(t) > have}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  pens: {
    id: 'pens-needed',
    title: 'Field pens needed',
    words: 'Birds at the move times floor per bird, divided by the floor of one pen, rounded up.',
    symbols: 'n = ⌈N·a ÷ A_pen⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  ground: {
    id: 'ground-covered',
    title: 'Ground covered by the pens',
    words: 'Floor of all pens, times moves a day, times days on grass: no pen stands twice.',
    symbols: 'G = n·A_pen·m·D',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  nitrogen: {
    id: 'manure-nitrogen',
    title: 'Manure nitrogen laid on that ground',
    words:
      'Nitrogen per kilogram of live weight and day, summed over the days on grass, divided by the ground.',
    symbols: 'N = Σ n_day·N_birds·W(t) ÷ G',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  litter: {
    id: 'litter-volume',
    title: 'Bedding',
    words:
      'Floor times depth at the start; a quarter more each following week as top-up. Bags are counted by the volume one opens to.',
    symbols: 'V = A·d·(1 + 0.25·weeks)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** The row of a standard that holds at an age. */
export function spaceRowAt(rows: readonly SpaceRow[], ageDays: number): SpaceRow {
  return rows.findLast((row) => row.fromDay <= ageDays) ?? rows[0]!;
}

/** Tables are printed in square feet and stored to three digits: by so much they may be off. */
const OF_DIGITS = 1.002;

/** Whole birds on a floor, m², by the floor of one, m². */
export const birdsThatFit = (haveM2: number, eachM2: number): number =>
  Math.floor((haveM2 / eachM2) * OF_DIGITS);
