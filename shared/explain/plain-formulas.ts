import type { Formula } from './formula.js';

/** Arithmetic that needs no publication. */
export const plainFormulas = {
  measured: {
    id: 'as-given',
    title: 'What there is',
    words:
      'Measured or counted by you, or assumed until you do; where there are several of a size, one times how many.',
    symbols: 'A = a·n',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  free: {
    id: 'room-free',
    title: 'Room that is free',
    words: 'What it holds, less what is taken already.',
    symbols: 'V = V_all − V_taken',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  perBird: {
    id: 'per-bird',
    title: 'For each bird',
    words: 'The amount of the flock divided by the birds alive at the end of it.',
    symbols: 'f = F ÷ N',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  times: {
    id: 'number-times-each',
    title: 'All of them',
    words: 'The number you have times the amount of one.',
    symbols: 'A = n·a',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  circuitLoad: {
    id: 'circuit-load-sum',
    title: 'Load on the circuit',
    words: 'Watts of the heaters you have, plus what else is on the circuit.',
    symbols: 'P = n·P_each + P_other',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  nests: {
    id: 'nest-boxes',
    title: 'Nest boxes',
    words: 'Hens divided by the hens that share a nest, rounded up.',
    symbols: 'n = ⌈N ÷ h⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;
