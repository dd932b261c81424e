import type { Formula } from '../../explain/formula.js';

export const feedYearFormulas = {
  fed: {
    id: 'feed-of-year',
    title: 'Feed of the year',
    words:
      'What the batches that eat it are fed in the year from today, by their plans. Hens eat on after their planned year as in its last week.',
    symbols: 'F = Σ F_day',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  inStore: {
    id: 'feed-in-store',
    title: 'Feed in the store',
    words:
      'Bags that were counted or told as bought, less what was fed since: by the bags that were opened, the last of them in use, else as planned.',
    symbols: 'S = Σ bought − fed',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  runsOut: {
    id: 'feed-runs-out',
    title: 'Feed runs out',
    words: 'First day on which what lies in the store is fed, or is too old.',
    symbols: 'S < Σ F_day',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  bags: {
    id: 'feed-bags-of-trip',
    title: 'Bags to buy',
    words:
      'Whole bags, so that all trips, prices and quantities from which they fall cost least together. No feed runs out, is fed past its keeping, or lies over what the store takes. What is left of one batch is eaten by the next. For given trips each feed is exact, by dynamic programming; the days of the trips are searched for.',
    symbols: 'min Σ c(b) + Σ c_trip',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  day: {
    id: 'feed-trip-day',
    title: 'Day of the trip',
    words:
      'The latest day that costs no more: a few days before the first feed runs out, when the seller is open and somebody has the hours. Feed of birds that are to come is left for a later trip until soon before they do.',
    symbols: 'D ≤ D_out − days in hand',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  trip: {
    id: 'feed-trip-cost',
    title: 'One trip or delivery',
    words: 'As you gave it, however much is bought.',
    symbols: 'C = c_trip',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  fetched: {
    id: 'feed-fetched-for',
    title: 'Feed fetched for a batch',
    words:
      'Of each purchase as much as the batch eats of that feed while the purchase lasts, over all who eat it then.',
    symbols: 'n = Σ bags·F_batch ÷ F_all',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  tripShare: {
    id: 'feed-trip-share',
    title: 'Share of the trips',
    words:
      'Each trip is shared among the batches by the weight that is fetched for them on it. The shares of a trip add up to it.',
    symbols: 'C = Σ c_trip·n ÷ n_trip',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  fetching: {
    id: 'feed-fetching-per-kg',
    title: 'Fetching feed, by weight',
    words: 'What the trips of the year cost, over the weight fetched on them.',
    symbols: 'c = C ÷ n',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  sum: {
    id: 'feed-money-sum',
    title: 'Added up',
    words:
      'Each part rounded once to the smallest coin, and added. What has no price is named and is not counted.',
    symbols: 'C = Σ c',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  store: {
    id: 'feed-store-most',
    title: 'Most feed in the store',
    words: 'The day with most in it, after its trip and before it is fed.',
    symbols: 'max S(t)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;
