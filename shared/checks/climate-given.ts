import type { Given } from './given.js';

/** Twelve figures of a row, January first, as it gives them in a line. */
export const monthsIn = ({ text }: Pick<Given, 'text'>, name: string): number[] =>
  text(name).split(' ').map(Number);
