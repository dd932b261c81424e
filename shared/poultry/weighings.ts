import type { Formula } from '../explain/formula.js';
import { leastAt } from '../maths/golden-section.js';
import type { GrowingTable } from '../tables/growing-table.js';

export const weighingFormulas = {
  speed: {
    id: 'growth-speed',
    title: 'How fast your birds grow',
    words:
      'The curve of the breed keeps its shape and its grown weight; one figure says how fast these birds run through it. It is the one whose curve passes nearest to your weighings and to the breed’s usual pace (least squares of logarithms, the surer counting more). A weighing is surer the more birds were on the scale and the older they were: how chicks start says little of how they go on. Three weeks of weighings cannot tell what a bird weighs grown, so that is not asked of them.',
    symbols: 'min_s Σ [ln W_i − ln W(s·t_i)]² ÷ (e_i² + (w ÷ t_i)²) + (s − 1)² ÷ u²',
    sources: ['GOMPERTZ_FITS'],
    mark: 'own-record',
  },
  average: {
    id: 'weighed-average',
    title: 'Average weight of the birds weighed',
    words:
      'What was weighed, over the birds weighed. Birds differ: the average of a few lies about so far from that of all, 19 times in 20. It is nothing when all are weighed, but for the scale.',
    symbols: 'W ± 1.96·W·√[cv²·(N − n) ÷ (n·(N − 1)) + scale²]',
    sources: ['EVENNESS_2021'],
    mark: 'own-record',
  },
  toWeigh: {
    id: 'birds-to-weigh',
    title: 'Birds to weigh',
    words:
      'The fewest birds whose average lies within a twentieth of the flock’s, 19 times in 20. Take them from several places, and weigh all that the crate holds: those that come to hand are not the average ones.',
    symbols: 'n = m ÷ (1 + (m − 1) ÷ N), m = (1.96·cv ÷ 0.05)²',
    sources: ['EVENNESS_2021'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Of a normal distribution, 19 of 20 lie within so many standard deviations. */
export const NINETEEN_IN_TWENTY = 1.96;

/**
 * How far the average of some birds lies from that of the flock: one standard deviation, as a share.
 *
 * @param birds weighed, 1 or more
 * @param alive in the flock; taken as at least those weighed
 */
export function averageError(
  { cv, scaleShare }: GrowingTable['evenness'],
  birds: number,
  alive: number,
): number {
  const flock = Math.max(birds, alive);
  const left = flock <= 1 ? 0 : (flock - birds) / (flock - 1);
  return Math.sqrt((cv * cv * left) / birds + scaleShare * scaleShare);
}

/** How near the average of the birds weighed shall come to that of all. */
const NEAR_ENOUGH = 0.05;

/** Fewest birds to weigh, out of a flock, to know its average within a share 19 times in 20. */
export function birdsToWeigh(
  { cv }: Pick<GrowingTable['evenness'], 'cv'>,
  flock: number,
  within = NEAR_ENOUGH,
): number {
  const many = ((NINETEEN_IN_TWENTY * cv) / within) ** 2;
  return Math.min(flock, Math.ceil(many / (1 + (many - 1) / flock) - 1e-9));
}

/** An average weight that was found at an age, and how sure it is. */
export interface WeighedAt {
  readonly ageDays: number;
  readonly kg: number;
  /** One standard deviation, as a share of the weight. */
  readonly error: number;
}

/** How fast birds run through their table. */
export interface Speed {
  readonly value: number;
  /** One standard deviation. */
  readonly error: number;
}

/**
 * What a weighing leaves open of how birds go on, one standard deviation as a share: what the birds
 * that were not weighed leave open, and that birds do not keep to the curve of their breed.
 *
 * @param wanderDays so far birds of one day stray; the older they are, the less
 */
export const openAt = (averageOpen: number, wanderDays: number, ageDays: number): number =>
  Math.hypot(averageOpen, wanderDays / Math.max(1, ageDays));

/** Beyond these a weighing is rather a slip than a bird. */
export const SPEEDS = { least: 0.65, most: 1.45 } as const;

/**
 * The speed at which a curve comes nearest to weighings and to what is usual.
 *
 * @param weightsAt average live weights by age, kg, of birds that grow at a speed
 * @param usual speed of such birds before any was weighed
 * @returns within `SPEEDS`; at one of its ends when the weighings lie beyond
 */
export function fittedSpeed(
  weighings: readonly WeighedAt[],
  weightsAt: (speed: number) => ArrayLike<number>,
  usual: Speed,
): Speed {
  const misfit = (speed: number): number => {
    const kg = weightsAt(speed);
    const ofUsual = ((speed - usual.value) / usual.error) ** 2;
    return weighings.reduce(
      (sum, w) => sum + (Math.log(kg[w.ageDays]! / w.kg) / w.error) ** 2,
      ofUsual,
    );
  };
  // No finer than a weighing can tell: birds that weigh what was planned change nothing.
  const value = Math.round(leastAt(misfit, SPEEDS.least, SPEEDS.most) * 1e4) / 1e4;
  const [slower, faster] = [weightsAt(value - STEP), weightsAt(value + STEP)];
  const known = weighings.reduce((sum, { ageDays, error }) => {
    const slope = Math.log(faster[ageDays]! / slower[ageDays]!) / (2 * STEP);
    return sum + (slope / error) ** 2;
  }, usual.error ** -2);
  return { value, error: 1 / Math.sqrt(known) };
}

/** Width of the difference that stands for a slope. */
const STEP = 0.01;
