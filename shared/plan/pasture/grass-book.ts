import type { Chosen } from './surplus.js';

/** Where the grass of all paddocks went, kg of dry matter. */
export interface GrassBook {
  readonly startKg: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly mownKg: number;
  readonly diedOffKg: number;
  readonly endKg: number;
}

/** The books of all paddocks over the season, summed. */
export function bookOf({ books }: Chosen): GrassBook {
  const total = (key: keyof GrassBook): number =>
    Math.round(books.paddocks.reduce((sum, book) => sum + book[key], 0) * 10) / 10;
  return {
    startKg: total('startKg'),
    grownKg: total('grownKg'),
    eatenKg: total('eatenKg'),
    trampledKg: total('trampledKg'),
    mownKg: total('mownKg'),
    diedOffKg: total('diedOffKg'),
    endKg: total('endKg'),
  };
}
