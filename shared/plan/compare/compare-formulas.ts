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
  moved: {
    id: 'moved-by-spread',
    title: 'The bill with one thing otherwise',
    words:
      'The batch planned again with this one input as another source has it, and as many young.',
    symbols: 'C(x = x_source)',
    ...SUM,
  },
  joined: {
    id: 'range-of-bill',
    title: 'The bill and its range',
    words:
      'What is planned, and how far all open inputs move it together. They are taken to have nothing to do with one another, so they hardly all go wrong at once: each side is the root of the sum of the squares of what each input does.',
    symbols: 'C ± √Σ ΔC²',
    ...SUM,
  },
} satisfies Record<string, Formula>;
