import type { Formula } from '../../explain/formula.js';

export const feedActualFormulas = {
  used: {
    id: 'feed-used-told',
    title: 'Feed used, as told',
    words:
      'Bags opened from the first day told to the last: when the last was opened, those before it were empty.',
    symbols: 'F = Σ bags·kg',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  planned: {
    id: 'feed-planned-money',
    title: 'Feed as planned before they came',
    words:
      'Feed of the plan as it was on the day they came, for the same days, at the planned prices.',
    symbols: 'C₀ = Σ F₀·p₀',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  actual: {
    id: 'feed-actual-money',
    title: 'Feed as it was',
    words:
      'Bags opened, at what was paid on average for a feed of that name; at the planned price where none was told.',
    symbols: 'C = Σ F·p',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  heads: {
    id: 'feed-more-heads',
    title: 'More or fewer birds',
    words:
      'Feed of the same plan with the birds that were counted, less that with the birds planned, at the planned prices.',
    symbols: 'C₁ − C₀',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  intake: {
    id: 'feed-more-intake',
    title: 'Larger or smaller birds',
    words:
      'Feed of the plan with the weights you told, less that without, at the planned prices: larger birds eat more.',
    symbols: 'C₂ − C₁',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  waste: {
    id: 'feed-more-waste',
    title: 'Spilled, or eaten beyond their weight',
    words:
      'Bags opened, less what birds of that number and weight should take, at the planned prices. Feed that others ate and bags that are not empty yet count here.',
    symbols: 'C₃ − C₂',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  price: {
    id: 'feed-more-price',
    title: 'Dearer or cheaper feed',
    words: 'The same bags at what was paid, less those at the planned price.',
    symbols: 'C − C₃',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  toCome: {
    id: 'feed-money-to-come',
    title: 'Feed still to come',
    words:
      'Feed of the plan as it is by now, with what was counted, weighed and opened, for the days that are left of it this year, at the prices it was first planned at.',
    symbols: 'C = Σ F·p₀',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  ofAll: {
    id: 'feed-actual-of-all',
    title: 'Of all batches',
    words: 'That of each batch whose bags were told, added up.',
    symbols: 'C = Σ Cᵢ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  conversion: {
    id: 'feed-conversion-so-far',
    title: 'Feed for a weight gained, so far',
    words:
      'Feed used over what the flock weighs more at the end of those days than at their beginning, by the plan with the weights you told.',
    symbols: 'c = F ÷ ΔW',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;
