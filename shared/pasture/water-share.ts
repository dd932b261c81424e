/**
 * What the ground holds after a day, mm: rain comes, leaves draw, and what it cannot hold drains.
 * Jouven et al. 2006, equation 14.
 */
export const waterAfter = (mm: number, rainMm: number, drawnMm: number, heldMm: number): number =>
  Math.min(heldMm, Math.max(0, mm + rainMm - drawnMm));

/** Daily evapotranspiration at which the answer to soil water changes, mm. */
const MIDDLE_FROM_MM = 3.8;
const HIGH_FROM_MM = 6.5;

function onLowDraw(held: number): number {
  if (held <= 0.2) return 4 * held;
  if (held <= 0.4) return 0.8 + 0.75 * (held - 0.2);
  return held <= 0.6 ? 0.95 + 0.25 * (held - 0.4) : 1;
}

function onMiddleDraw(held: number): number {
  if (held <= 0.2) return 2 * held;
  if (held <= 0.4) return 0.4 + 1.5 * (held - 0.2);
  if (held <= 0.6) return 0.7 + (held - 0.4);
  return held <= 0.8 ? 0.9 + 0.5 * (held - 0.6) : 1;
}

/** Half width over which the steps of evapotranspiration are blended, mm: a planning guess. */
const BLEND_MM = 0.3;

/**
 * Share of growth that soil water leaves, by straight lines through the points of Jouven et al.
 * 2006, figure 2c (after McCall and Bishop-Hurley 2003).
 *
 * As printed it jumps where the day's evapotranspiration passes 3.8 and 6.5 mm; a plan goes from
 * one line to the next over some tenths.
 */
export function waterShare(heldShare: number, referenceMm: number, blendMm = BLEND_MM): number {
  if (1 <= heldShare) return 1;
  if (referenceMm <= MIDDLE_FROM_MM - blendMm) return onLowDraw(heldShare);
  const middle = onMiddleDraw(heldShare);
  if (referenceMm < MIDDLE_FROM_MM + blendMm) {
    const low = onLowDraw(heldShare);
    return low + blend((referenceMm - MIDDLE_FROM_MM) / blendMm) * (middle - low);
  }
  return middle + blend((referenceMm - HIGH_FROM_MM) / blendMm) * (heldShare - middle);
}
const blend = (x: number): number => Math.min(1, Math.max(0, (x + 1) / 2));
