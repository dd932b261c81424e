/** Draws numbers from 0 to below 1. Handed in, so that the same seed gives the same plan. */
export type Random = () => number;

/** A whole number from 0 to below `count`. */
export const drawIndex = (random: Random, count: number): number => Math.floor(random() * count);
