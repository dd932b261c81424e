import type { Formula } from '../explain/formula.js';
import { normalBelow } from '../maths/normal.js';

export const evennessFormulas = {
  cv: {
    id: 'birds-differ',
    title: 'How far birds differ',
    words:
      'The standard deviation of the single weights over their average, with one bird fewer in the division than were weighed.',
    symbols: 'cv = √[Σ(W_i − W)² ÷ (n − 1)] ÷ W',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  near: {
    id: 'birds-near-average',
    title: 'Birds near the average',
    words: 'Those whose weight lies within a tenth of the average, of those that were weighed.',
    symbols: 'n_near = |{i : |W_i − W| ≤ 0.1·W}|',
    sources: ['EVENNESS_2021'],
    mark: 'own-record',
  },
  known: {
    id: 'birds-differ-known',
    title: 'How far birds are taken to differ',
    words:
      'What single weights show, together with what is usual: the usual counts for as much as so many birds on the scale. A few weights move it little, many decide it.',
    symbols: 'cv² = (m·cv_usual² + (n − 1)·cv_weighed²) ÷ (m + n − 1)',
    sources: ['EVENNESS_2021'],
    mark: 'own-record',
  },
} satisfies Record<string, Formula>;

/** What single weights say of the birds they are of. */
export interface Spread {
  readonly meanKg: number;
  /** Standard deviation over the average, n − 1 in the division; undefined for one bird. */
  readonly cv: number | undefined;
  /** Birds within a tenth of the average. */
  readonly near: number;
}

/** Evenness is counted within a tenth of the average. */
const NEAR_SHARE = 0.1;

/** @param eachKg weights of single birds, one or more, kg */
export function spreadOf(eachKg: readonly number[]): Spread {
  const n = eachKg.length;
  const meanKg = eachKg.reduce((sum, kg) => sum + kg, 0) / n;
  const squares = eachKg.reduce((sum, kg) => sum + (kg - meanKg) ** 2, 0);
  return {
    meanKg,
    cv: n < 2 ? undefined : Math.sqrt(squares / (n - 1)) / meanKg,
    // A bird at exactly a tenth counts, whatever a division makes of it.
    near: eachKg.filter((kg) => Math.abs(kg - meanKg) <= NEAR_SHARE * meanKg + 1e-9).length,
  };
}

/** Share of birds within a tenth of the average where weights are normal: 2Φ(0.1/cv) − 1. */
export const nearShare = (cv: number): number => 2 * normalBelow(NEAR_SHARE / cv) - 1;

/**
 * How far the birds of a flock are taken to differ: what was weighed together with what is usual.
 *
 * @param asManyBirds birds on the scale that the usual counts for
 */
export const blendedCv = (
  usual: number,
  asManyBirds: number,
  { cv, birds }: { readonly cv: number | undefined; readonly birds: number },
): number =>
  cv === undefined
    ? usual
    : Math.sqrt((asManyBirds * usual * usual + (birds - 1) * cv * cv) / (asManyBirds + birds - 1));

/** How far birds of two sexes differ together that differ by `cv` in each. */
export const bothSexesCv = (cv: number, apartShare: number): number => Math.hypot(cv, apartShare);
