import type { Formula } from '../explain/formula.js';
import type { Forage } from '../tables/pasture-tables.js';
import { rowById, type Tables } from '../tables/tables.js';

export const hayFormulas = {
  need: {
    id: 'hay-needed',
    title: 'Hay to have in store',
    words:
      'Dry matter to feed, divided by the dry share of hay and by what is left after losses in store and at the feeder.',
    symbols: 'H = F ÷ (dm·(1 − l_store)·(1 − l_feed))',
    sources: ['GRAZING_13'],
    mark: 'published',
  },
  cut: {
    id: 'hay-cut',
    title: 'Hay from a paddock',
    words:
      'Forage above the cutting height times what mowing and raking bring home, divided by the dry share of hay.',
    symbols: 'H = A·(W − W_stubble)·s ÷ dm',
    sources: ['GRAZING_24'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/** Hay as it lies in store, kg, for an amount of dry matter eaten. Losses are shares from 0 to 0.9. */
export const hayNeededKg = (feed: {
  dryMatterKg: number;
  dryMatterShare: number;
  storeLoss: number;
  feedLoss: number;
}): number => feed.dryMatterKg / (feed.dryMatterShare * (1 - feed.storeLoss) * (1 - feed.feedLoss));

/** What hay is of that a farm without land buys: of mixed grass, as a paddock of which nothing is given. */
export const boughtHay = ({ forages }: Pick<Tables, 'forages'>): Forage =>
  rowById(forages, 'mixed');
