import type { Judgements } from '../tables/judgements.js';

/**
 * Whether a height that was read is so far from what was expected on its day that it is more likely
 * mistyped, as 80 for 8, than grown.
 *
 * @param heightCm as it was read, 0 or more
 * @param expectedCm what the plan expected to stand
 */
export const isOddReading = (
  heightCm: number,
  expectedCm: number,
  judged: Pick<
    Judgements['grass'],
    'oddReadingTimes' | 'oddReadingMoreCm' | 'oddReadingShare' | 'oddReadingLessCm'
  >,
): boolean =>
  judged.oddReadingTimes.value * expectedCm + judged.oddReadingMoreCm.value < heightCm ||
  heightCm < judged.oddReadingShare.value * expectedCm - judged.oddReadingLessCm.value;
