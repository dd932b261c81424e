/** Hours are rounder than that: fewer minutes are no news. */
const LEAST_MINUTES = 10;

/** Whether hours that are missing are worth a word. */
export const isWorthTelling = (hours: number): boolean => LEAST_MINUTES <= Math.round(60 * hours);
