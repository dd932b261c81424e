import type { Batch } from '../farm/batch.js';
import { isStarted } from '../farm/batch-origin.js';
import type { FeedProgram } from '../tables/bird-tables.js';
import { choicesFor, rowById, type Tables } from '../tables/tables.js';

/** What has to be known of an order to say how its birds are usually fed. */
export type OrderedBirds = Pick<Batch, 'purpose' | 'strainId' | 'wantedBirds' | 'origin'>;

/**
 * The list of feeds that a household buys for so many birds: of few birds the one with fewer feeds,
 * where one is said to be for few, since a table's list would leave an open bag of each; of more, and
 * of grown pullets, which are past the first feeds, the table's own.
 */
export function usualFeeds(
  { purpose, strainId, wantedBirds, origin }: OrderedBirds,
  { strains, feedPrograms }: Pick<Tables, 'strains' | 'feedPrograms'>,
): FeedProgram {
  const own = rowById(strains, strainId).feedProgram[purpose]!;
  const few = isStarted({ origin })
    ? undefined
    : choicesFor(feedPrograms, own).find(
        ({ fewBirds }) => fewBirds !== undefined && wantedBirds <= fewBirds,
      );
  return few ?? rowById(feedPrograms, own);
}
