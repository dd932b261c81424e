/** Figures of a bound that is read aloud. */
const FIGURES = 2;

const rounded = (value: number, round: (value: number) => number): number => {
  if (value === 0) return 0;
  const step = FIGURES - 1 - Math.floor(Math.log10(Math.abs(value)));
  // Floats such as 2.1 / 3 lie a hair beside what they mean.
  const steps = Number((value * 10 ** step).toPrecision(12));
  return Number(`${round(steps)}e${-step}`);
};

/**
 * Bounds of a check in two figures, rounded to the outside: checked with what is said, so that a value
 * at the bound that was read is never refused.
 */
export const outward = ({ min, max }: { readonly min: number; readonly max: number }) => ({
  min: rounded(min, Math.floor),
  max: rounded(max, Math.ceil),
});
