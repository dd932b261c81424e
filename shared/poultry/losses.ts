import type { Formula } from '../explain/formula.js';
import { atLeast, betaBelow, logBetaOf } from '../maths/beta.js';

export const lossFormulas = {
  alive: {
    id: 'birds-alive',
    title: 'Birds alive',
    words:
      'The first-week loss is spread evenly over the first seven days after arrival, the later loss over the rest of the growing time: to the day in the table, or to the last day they are kept when the household gave the loss. Birds kept longer go on being lost at the same rate. Each day keeps the same share of the birds. Pullets that come grown begin at their age, without the losses of chicks. Once birds were counted, it goes on from the count.',
    symbols: 'N(t) = N₀·(1 − l₁)^(t/7), then ·(1 − l₂)^((t − 7)/(T − 7))',
    sources: [],
    mark: 'computed',
  },
  order: {
    id: 'birds-to-order',
    title: 'Birds to order',
    words:
      'The fewest chicks that leave the number wanted in so many of a hundred such orders. Each chick is of the right sex with its chance; how many live varies from flock to flock more than a coin does, as losses come together.',
    symbols:
      'min{N₀: P(X ≥ N_wanted) ≥ p}, X ~ Bin(N₀, s·L), L ~ Beta(m·k, (1 − m)·k), k = 1/ρ − 1',
    sources: ['FLOCK_LOSSES'],
    mark: 'computed',
  },
  enough: {
    id: 'birds-enough',
    title: 'Chance of ending with the number wanted',
    words:
      'Of a hundred such orders, those that leave the number wanted or more, by the same distribution as the number to order.',
    symbols: 'P(X ≥ N_wanted)',
    sources: ['FLOCK_LOSSES'],
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
  // Birds that are kept longer than the table go on being lost, hens at the rate of their lay year.
  const grown = 0 < rates.layYearShare ? laterSpan : Infinity;
  const later = Math.max(0, Math.min(daysAfterArrival - 7, grown)) / laterSpan;
  const layYears = Math.max(0, daysAfterArrival - Math.max(7, rates.laterToDay)) / 365;
  return (
    power(1 - rates.firstWeekShare, week) *
    power(1 - rates.laterShare, later) *
    power(1 - rates.layYearShare, layYears)
  );
}

/** Most days lie in one of the three times only, and plans ask for hundreds of days. */
const power = (base: number, exponent: number): number =>
  exponent === 0 ? 1 : exponent === 1 ? base : base ** exponent;

/** An order, and what may become of it. */
export interface OrderOdds {
  /** Birds wanted at the end. */
  readonly wanted: number;
  /** Share that lives to then, average of many flocks. */
  readonly survivingShare: number;
  /** Chance of each chick to be of the sex that is wanted. */
  readonly sexShare: number;
  /** Likeness of the fates of two birds of a flock, 0 to 0.3: over-dispersion of losses. */
  readonly togetherness: number;
}

/** Points at which the share that lives is looked at. */
const STEPS = 24;
/** Standard deviations of that share on either side. */
const WIDTH = 5;

/** What may become of orders: the chance of enough, and how many to order for a chance. */
export interface OrderChances {
  /** Chance that so many chicks, 1 to 6,000, leave at least the birds wanted; to 0.01. */
  readonly enough: (ordered: number) => number;
  /** Fewest chicks that leave the number wanted with a chance, 0.01 to 0.99. */
  readonly toOrder: (chance: number) => number;
}

/**
 * Chances of orders: the share that lives is beta distributed over flocks, and each bird of the
 * right sex lives with it. Checked against beta-binomial tables.
 */
export function orderChances(odds: OrderOdds): OrderChances {
  const reach = reachOf(odds);
  const known = new Map<number, number>();
  const enough = (ordered: number): number => {
    let sum = known.get(ordered);
    if (sum === undefined) known.set(ordered, (sum = reach(odds.wanted, ordered)));
    return sum;
  };
  const toOrder = (chance: number): number =>
    fewest(odds, (ordered) => chance <= enough(ordered) + 1e-9);
  return { enough, toOrder };
}

/** Chance that at least so many of some birds live and are of the right sex. */
export function reachOf(
  odds: Omit<OrderOdds, 'wanted'>,
): (wanted: number, ordered: number) => number {
  const { chances, weights } = livesOf(odds);
  return (wanted, ordered) => {
    const each = atLeast(wanted, ordered, chances);
    let sum = 0;
    for (let i = 0; i < weights.length; i++) sum += weights[i]! * each[i]!;
    return Math.min(1, sum);
  };
}

/** Chances of one bird to live and be of the right sex, with how likely each is over flocks. */
function livesOf({
  survivingShare: mean,
  togetherness: rho,
  sexShare,
}: Omit<OrderOdds, 'wanted'>): {
  chances: Float64Array;
  weights: Float64Array;
} {
  if (1 - 1e-9 < mean || rho <= 0) {
    return { chances: Float64Array.of(Math.min(1, mean) * sexShare), weights: Float64Array.of(1) };
  }
  const k = 1 / rho - 1;
  const [a, b] = [mean * k, (1 - mean) * k];
  const logBeta = logBetaOf(a, b);
  const sd = Math.sqrt((mean * (1 - mean)) / (k + 1));
  const low = Math.max(0, mean - WIDTH * sd);
  const step = (Math.min(1, mean + WIDTH * sd) - low) / STEPS;
  const below = Float64Array.from({ length: STEPS + 1 }, (_, i) =>
    betaBelow(low + i * step, a, b, logBeta),
  );
  const all = below[STEPS]! - below[0]!;
  const likely = Array.from({ length: STEPS }, (_, i) => i).filter(
    (i) => 1e-7 < below[i + 1]! - below[i]!,
  );
  return {
    chances: Float64Array.from(likely, (i) => (low + (i + 0.5) * step) * sexShare),
    weights: Float64Array.from(likely, (i) => (below[i + 1]! - below[i]!) / all),
  };
}

function fewest(odds: OrderOdds, isEnough: (ordered: number) => boolean): number {
  let tooFew = odds.wanted - 1;
  let enough = Math.ceil(odds.wanted / (odds.survivingShare * odds.sexShare));
  while (!isEnough(enough)) {
    tooFew = enough;
    enough = Math.ceil(enough * 1.03) + 1;
  }
  while (1 < enough - tooFew) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
