/** Dashes of the lines of a chart, so that they are told apart in gray as well; base.css has them for the key. */
const DASHES = ['0', '8 3', '2 3', '12 3 2 3', '5 5', '1 4'] as const;

export type SeriesNumber = 1 | 2 | 3 | 4 | 5 | 6;

/** The color of a series, and how its line is dashed. */
export const series = (n: SeriesNumber): { color: string; strokeDasharray: string } => ({
  color: `var(--series-${n})`,
  strokeDasharray: DASHES[n - 1]!,
});

/** A chart is drawn at once: one that grows from the left is empty for whoever has just come to it. */
export const DRAWN_AT_ONCE = { isAnimationActive: false } as const;
