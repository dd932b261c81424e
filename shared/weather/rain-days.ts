import type { Random } from '../schedule/random.js';

/** How rain comes in days: needed where only its mean is known. */
export interface RainHabit {
  /** Mean rain of a wet day, mm. */
  readonly meanRainMm: number;
  /** Share of wet days that follow a wet one. */
  readonly wetAfterWetShare: number;
}

/** Most days of a wet time that are wet. */
const WETTEST = 0.9;

/** Share of days that are wet, from the mean rain of a day. */
export const wetShare = (meanMm: number, { meanRainMm }: RainHabit): number =>
  Math.min(WETTEST, meanMm / meanRainMm);

/**
 * Mean rain as wet spells and dry ones: as many wet days, as much rain and spells as long as
 * usual, so that dry days can be counted on beyond a forecast. Which day is wet is no forecast.
 */
export function typicalRain(meanMm: ArrayLike<number>, habit: RainHabit): Float64Array {
  const spellDays = 1 / (1 - habit.wetAfterWetShare);
  let due = spellDays / 2;
  let isWet = false;
  return Float64Array.from(meanMm, (mm) => {
    const share = wetShare(mm, habit);
    due += share;
    isWet = isWet ? 1 <= due : spellDays <= due;
    if (!isWet || share === 0) return 0;
    due -= 1;
    return mm / share;
  });
}

/**
 * Chance that at least one of several days in a row is wet: wet days follow wet ones, so that a dry
 * start makes the rest likelier dry. Range: 0 to 1.
 *
 * @param days rain of a mean day of each date, mm; whether it is wet where a forecast says so
 */
export function chanceOfWetDay(
  days: readonly { readonly meanMm: number; readonly isWet?: boolean }[],
  habit: RainHabit,
): number {
  let dry = 1;
  days.forEach(({ meanMm, isWet }, day) => {
    const share = wetShare(meanMm, habit);
    const chance = day === 0 ? share : afterDry(share, habit);
    dry *= 1 - (isWet === undefined ? chance : Number(isWet));
  });
  return 1 - dry;
}

/** Chance that a day is wet, by the day before. */
export const chanceOfWet = (share: number, isAfterWet: boolean, habit: RainHabit): number =>
  isAfterWet ? Math.max(habit.wetAfterWetShare, share) : afterDry(share, habit);

/** Share of days that are wet after a dry one. */
const afterDry = (share: number, { wetAfterWetShare }: RainHabit): number =>
  (share * (1 - Math.max(wetAfterWetShare, share))) / (1 - share);

/**
 * One year's rain drawn by chance: wet days follow wet ones more often, amounts are exponential.
 *
 * Source: Richardson, "Stochastic simulation of daily precipitation, temperature, and solar
 * radiation", Water Resources Research 17 (1981): first-order chain of two states.
 */
export function randomRain(
  meanMm: ArrayLike<number>,
  habit: RainHabit,
  random: Random,
): Float64Array {
  let isWet = false;
  return Float64Array.from(meanMm, (mm) => {
    const share = wetShare(mm, habit);
    if (share <= 0) return 0;
    isWet = random() < chanceOfWet(share, isWet, habit);
    return isWet ? -Math.log(1 - random()) * (mm / share) : 0;
  });
}
