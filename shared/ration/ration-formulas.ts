import type { Formula } from '../explain/formula.js';

export const rationFormulas = {
  amount: {
    id: 'ration-amount',
    title: 'How much of each',
    words:
      'Of all mixes that keep every limit, the one that costs least (a linear program), rounded to what a scale reads.',
    symbols: 'min Σ pᵢ·xᵢ; Σ xᵢ = 1; bⱼ ≤ Σ nᵢⱼ·xᵢ; lᵢ ≤ xᵢ ≤ uᵢ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  holds: {
    id: 'ration-holds',
    title: 'What the mix holds',
    words: 'What each part holds, by its share of the mix.',
    symbols: 'n = Σ xᵢ·nᵢ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  need: {
    id: 'ration-need',
    title: 'What they need in it',
    words:
      'The need of the table, in proportion to the energy of the mix: of a weaker feed birds eat more.',
    symbols: 'b = b₀·E ÷ E₀',
    sources: ['LIKE_ENERGY'],
    mark: 'from-memory',
  },
  cost: {
    id: 'ration-cost',
    title: 'What the mix costs',
    words: 'Your prices, by what goes in. Grinding and your time are not in it.',
    symbols: 'c = Σ xᵢ·pᵢ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  toBegin: {
    id: 'ration-to-begin',
    title: 'Whole bags to begin with',
    words:
      'Whole bags that hold what one mix takes, at your prices. What is left goes into the next.',
    symbols: 'C = Σ nᵢ·pᵢ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  likeBag: {
    id: 'ration-like-bag',
    title: 'Your mix in the place of a bag',
    words:
      'What the mix costs, by the weight of a bag, and by how much more or less of it they eat than of a feed with the energy of the bought one.',
    symbols: 'C = c·m·E_bought ÷ E',
    sources: ['LIKE_ENERGY'],
    mark: 'from-memory',
  },
  bought: {
    id: 'ration-bought',
    title: 'What the bought feed costs',
    words: 'Your price of a bag.',
    symbols: 'C = p',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;
