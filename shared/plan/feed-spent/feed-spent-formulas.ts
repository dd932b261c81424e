import type { Formula } from '../../explain/formula.js';

const TOLD = { sources: ['ARITHMETIC'], mark: 'own-record' } as const;
const WORKED_OUT = { sources: ['ARITHMETIC'], mark: 'computed' } as const;

export const feedSpentFormulas = {
  paid: {
    id: 'feed-spent-paid',
    title: 'Paid, as told',
    words:
      'Money of the receipts, added up. A line without money is taken at the price of today; a trip at what you gave for it.',
    symbols: 'C = Σ c',
    ...TOLD,
  },
  bags: {
    id: 'feed-spent-bags',
    title: 'Bought, as told',
    words: 'Bags or bales of the receipts, added up.',
    symbols: 'n = Σ bags',
    ...TOLD,
  },
  eaten: {
    id: 'feed-spent-eater',
    title: 'Who ate it',
    words:
      'Each purchase goes to the batches that ate of that feed until it was bought again, by what their plans fed them. Trips go by the weight fetched. Hay and minerals are those of the herds.',
    symbols: 'C = Σ c·F_batch ÷ F_all',
    ...WORKED_OUT,
  },
  listed: {
    id: 'feed-spent-listed',
    title: 'What you bought, at today’s prices',
    words:
      'The same bags on the same trips at the prices of today, with what falls from so many bags on, so that both sides go by one price list.',
    symbols: 'C₀ = Σ n·price(n) + Σ c_trip',
    ...WORKED_OUT,
  },
  otherwise: {
    id: 'feed-spent-otherwise',
    title: 'Bought otherwise',
    words:
      'The same feed on the same days, bought at least cost: whole bags, none fed past its keeping, none over what the store takes, on days on which the seller is open. What is eaten goes by the plans of the batches where these ate about as much as was bought; else each purchase is used up evenly until the next.',
    symbols: 'C₁ = min Σ n·price(n) + Σ c_trip',
    ...WORKED_OUT,
  },
  saved: {
    id: 'feed-spent-saved',
    title: 'Saved by it',
    words: 'What was bought at today’s prices, less the same feed bought otherwise.',
    symbols: 'C₀ − C₁',
    ...WORKED_OUT,
  },
  stale: {
    id: 'feed-spent-stale',
    title: 'Older than it keeps',
    words:
      'Of each purchase what is still there after the days it keeps, where what was bought first is eaten first, by the plans of the batches.',
    symbols: 'n = Σ max(0, bought − eaten by then)',
    ...WORKED_OUT,
  },
} satisfies Record<string, Formula>;
