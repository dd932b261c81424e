import { wetShare, type RainHabit } from './rain-days.js';

/**
 * Chance that days in a row hold at least one run of so many dry ones. Wet days follow wet ones
 * and dry days dry ones; the first day is as wet as any.
 *
 * Range: 0 to 1; a run longer than the days has no chance.
 *
 * Source: Richardson, Water Resources Research 17 (1981): first-order chain of two states; the
 * length of the run up to each day is followed exactly.
 *
 * @param meanMm rain of a mean day of each date, mm
 * @param runDays dry days in a row that are asked for, at least 1
 */
export function chanceOfDryRun(
  meanMm: readonly number[],
  runDays: number,
  habit: RainHabit,
): number {
  // Chance of each length of the dry run up to the day before, and of having had one long enough.
  let lengths = new Array<number>(runDays).fill(0);
  let had = 0;
  meanMm.forEach((mm, day) => {
    const share = wetShare(mm, habit);
    const afterWet = Math.max(habit.wetAfterWetShare, share);
    const afterDry = (share * (1 - afterWet)) / (1 - share);
    const next = new Array<number>(runDays).fill(0);
    const open = day === 0 ? [1] : lengths;
    open.forEach((chance, length) => {
      const isWet = day === 0 ? share : share === 0 ? 0 : length === 0 ? afterWet : afterDry;
      next[0]! += chance * isWet;
      if (length + 1 === runDays) had += chance * (1 - isWet);
      else next[length + 1]! += chance * (1 - isWet);
    });
    lengths = next;
  });
  return had;
}

/** Whether days hold a run of so many dry ones. */
export function hasDryRun(rainMm: ArrayLike<number>, runDays: number, wetFromMm: number): boolean {
  let run = 0;
  for (let day = 0; day < rainMm.length; day++) {
    run = rainMm[day]! < wetFromMm ? run + 1 : 0;
    if (run === runDays) return true;
  }
  return false;
}
