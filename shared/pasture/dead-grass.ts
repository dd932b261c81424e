import type { DeadGrass } from '../tables/pasture-tables.js';

/**
 * Of the rate at which dead grass falls where it is wet, the share that is left on a day.
 *
 * Range: 0 to 1.
 *
 * Source: the moisture that litter rots by in CENTURY; Adair et al., Global Change Biology 14 (2008).
 *
 * @param wetness rain over what the air would take up
 */
export const deadGrassFalls = ({ dryDivisor, steepness }: DeadGrass, wetness: number): number =>
  1 / (1 + dryDivisor * Math.exp(-steepness * wetness));

/** Rain of the last days over what the air would have taken up in them, by day. */
export function rainWetness(
  { overDays }: DeadGrass,
  rainMm: Float64Array,
  referenceMm: Float64Array,
): Float64Array {
  let [rain, reference] = [0, 0];
  return Float64Array.from(rainMm, (mm, day) => {
    rain += mm;
    reference += referenceMm[day]!;
    if (overDays <= day) {
      rain -= rainMm[day - overDays]!;
      reference -= referenceMm[day - overDays]!;
    }
    return reference <= 0 ? 1 : rain / reference;
  });
}
