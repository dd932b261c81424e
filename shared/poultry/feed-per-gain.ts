/**
 * Feed for a kilogram gained: what was fed over what the birds weigh more at the end.
 *
 * @param feedKg fed between the two weighings, kg, 0 or more
 * @param startKg all of them before, kg; 0 counts what they weighed at hatch as gained
 * @param endKg all of them after, kg
 * @returns undefined where they gained nothing
 */
export const feedPerGain = ({
  feedKg,
  startKg,
  endKg,
}: {
  readonly feedKg: number;
  readonly startKg: number;
  readonly endKg: number;
}): number | undefined => (startKg < endKg ? feedKg / (endKg - startKg) : undefined);
