import type { Formula } from '../explain/formula.js';

export const lossFormulas = {
  alive: {
    id: 'birds-alive',
    title: 'Birds alive',
    words:
      'The first-week loss is spread evenly over the first seven days after arrival, the later loss over the rest of the growing time. Each day keeps the same share of the birds.',
    symbols: 'N(t) = N₀·(1 − l₁)^(t/7), then ·(1 − l₂)^((t − 7)/(T − 7))',
    sources: [],
    mark: 'computed',
  },
  order: {
    id: 'birds-to-order',
    title: 'Birds to order',
    words:
      'Birds wanted at the end, divided by the share that lives, and by the share of the sex that is wanted; rounded up to whole birds.',
    symbols: 'N₀ = ⌈N_wanted ÷ (s·(1 − l₁)·(1 − l₂))⌉',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface LossRates {
  /** Shares of the birds present, 0 to below 1. */
  readonly firstWeekShare: number;
  readonly laterShare: number;
  /** Days after arrival over which the later loss is spread. */
  readonly laterToDay: number;
  /** Share lost in a laying year, after `laterToDay`. */
  readonly layYearShare: number;
}

/**
 * Share of the placed birds still alive, days after arrival.
 *
 * @returns 1 at day 0, never rising
 */
export function survivingShare(rates: LossRates, daysAfterArrival: number): number {
  const week = Math.min(daysAfterArrival, 7) / 7;
  const laterSpan = Math.max(1, rates.laterToDay - 7);
  const later = Math.max(0, Math.min(daysAfterArrival - 7, laterSpan)) / laterSpan;
  const layYears = Math.max(0, daysAfterArrival - Math.max(7, rates.laterToDay)) / 365;
  return (
    (1 - rates.firstWeekShare) ** week *
    (1 - rates.laterShare) ** later *
    (1 - rates.layYearShare) ** layYears
  );
}

/** Birds to order so that `wanted` are left, rounded up. */
export function birdsToOrder(input: {
  wanted: number;
  survivingShare: number;
  wantedSexShare: number;
}): number {
  // The small allowance keeps an exact answer, such as 75 ÷ 0.75, from being rounded up by one.
  return Math.ceil(input.wanted / (input.survivingShare * input.wantedSexShare) - 1e-9);
}
