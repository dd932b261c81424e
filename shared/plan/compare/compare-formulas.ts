import type { Formula } from '../../explain/formula.js';

const SUM = { sources: ['ARITHMETIC'], mark: 'computed' } as const;

export const compareFormulas = {
  added: {
    id: 'choice-together',
    title: 'All of them together',
    words: 'What each batch of the choice comes to, added up.',
    symbols: 'A = Σ a',
    ...SUM,
  },
  each: {
    id: 'choice-each',
    title: 'Cost of one',
    words: 'All costs of the choice, over all its dressed weight, or its dozens of eggs.',
    symbols: 'c = C ÷ n',
    ...SUM,
  },
  lost: {
    id: 'choice-lost',
    title: 'Birds lost on the way',
    words: 'The young that came, less those at the end and cockerels that leave before.',
    symbols: 'L = N₀ − N',
    ...SUM,
  },
} satisfies Record<string, Formula>;
