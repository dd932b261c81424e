import { lowerCriticalC } from '../poultry/cold-feed.js';
import type { Topic } from './given.js';

/** What cold costs birds after the move. */
export const coldChecks: Topic = {
  title: 'Cold nights outdoors',
  by: {
    'lower-critical': ({ tables, number }) =>
      lowerCriticalC(tables.nights.coldFeed, number('weightKg')),
  },
};
