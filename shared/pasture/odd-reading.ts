/** Readings that differ from what was expected by more than these are asked about. */
const MOST_TIMES = 2;
const MORE_CM = 6;
const LEAST_SHARE = 0.3;
const LESS_CM = 6;

/**
 * Whether a height that was read is so far from what was expected on its day that it is more likely
 * mistyped, as 80 for 8, than grown. A planning guess: grass and sticks differ by half, not by that.
 *
 * @param heightCm as it was read, 0 or more
 * @param expectedCm what the plan expected to stand
 */
export const isOddReading = (heightCm: number, expectedCm: number): boolean =>
  MOST_TIMES * expectedCm + MORE_CM < heightCm || heightCm < LEAST_SHARE * expectedCm - LESS_CM;
