import { daysBetween } from '../../calendar/plain-date.js';
import type { Quantity } from '../../explain/quantity.js';

/** Least change that is worth telling: days of a date, a share of a number. */
const LEAST = { days: 1, share: 0.005 } as const;

/** How far a number or date has moved: a share, or days; none where it is too little to tell. */
export function howFar(before: Quantity, after: Quantity): number {
  const [from, to] = [before.value, after.value];
  if (typeof from === 'number' && typeof to === 'number') {
    const share = Math.abs(to - from) / Math.max(Math.abs(from), 1e-9);
    return share < LEAST.share ? 0 : share;
  }
  if (before.unit !== 'date' || typeof from !== 'string' || typeof to !== 'string') return 0;
  const days = Math.abs(daysBetween(from, to));
  return days < LEAST.days ? 0 : days;
}

/** What is made when it is first asked for, and then kept: a plan that is made for a question. */
export function once<T>(make: () => T): () => T {
  let made: { readonly it: T } | undefined;
  return () => (made ??= { it: make() }).it;
}
