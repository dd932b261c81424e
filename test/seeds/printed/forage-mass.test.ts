import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import type { Stand } from '../../../shared/farm/paddock.js';
import { CM_PER_IN, HA_PER_ACRE, KG_PER_LB } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';

const KG_HA_PER_LB_ACRE = KG_PER_LB / HA_PER_ACRE;
/** kg/ha in a centimeter for each pound on an acre-inch. */
const KG_HA_CM_PER_LB_ACRE_IN = KG_HA_PER_LB_ACRE / CM_PER_IN;
/** Stored to four digits. */
const FOUR_DIGITS = 0.0006;

describe('dry matter in a height of sward', () => {
  // University of Maine Extension, "Lesson 1 Planning a Grazing System", Appendix D (values of a
  // Cornell and NRCS pasture stick), and "Lesson 5: Grazing Period Stock Density", 2014, Table 1.
  // Retrieved; lb of dry matter on an acre in an inch, low to high.
  it.each<readonly [string, Stand, number, number]>([
    ['bluegrass-clover', 'fair', 150, 200],
    ['bluegrass-clover', 'good', 250, 300],
    ['bluegrass-clover', 'excellent', 350, 400],
    ['ryegrass-clover', 'fair', 150, 200],
    ['ryegrass-clover', 'good', 250, 300],
    ['ryegrass-clover', 'excellent', 350, 400],
    ['orchardgrass-legume', 'fair', 150, 200],
    ['orchardgrass-legume', 'good', 250, 300],
    ['orchardgrass-legume', 'excellent', 300, 350],
    ['timothy-legume', 'fair', 150, 200],
    ['timothy-legume', 'good', 250, 300],
    ['timothy-legume', 'excellent', 300, 350],
    ['tall-fescue', 'fair', 100, 150],
    ['tall-fescue', 'good', 200, 250],
    ['tall-fescue', 'excellent', 350, 400],
    ['mixed', 'fair', 150, 200],
    ['mixed', 'good', 250, 300],
    ['mixed', 'excellent', 300, 350],
  ])('is in %s, %s stand, %d to %d lb an acre-inch (Maine, Appendix D)', (id, stand, low, high) => {
    const row = rowById(tables.forages, id).massKgPerHaCm[stand];
    expect(Math.abs(row.low / (low * KG_HA_CM_PER_LB_ACRE_IN) - 1)).toBeLessThan(FOUR_DIGITS);
    expect(Math.abs(row.high / (high * KG_HA_CM_PER_LB_ACRE_IN) - 1)).toBeLessThan(FOUR_DIGITS);
    expect(Math.abs((2 * row.value) / (row.low + row.high) - 1)).toBeLessThan(FOUR_DIGITS);
  });

  // From memory: no retrieved source gives these.
  it.each([
    ['bermudagrass', 100, 200, 200, 300, 300, 400],
    ['alfalfa-grass', 75, 150, 150, 225, 225, 300],
    ['native-warm', 50, 100, 100, 150, 150, 250],
  ])('is in %s %d to %d, %d to %d and %d to %d lb (from memory)', (id, ...printed) => {
    const { massKgPerHaCm } = rowById(tables.forages, id);
    expect(massKgPerHaCm.mark).toBe('from-memory');
    const stored = (['fair', 'good', 'excellent'] as const).flatMap((stand) => [
      massKgPerHaCm[stand].low,
      massKgPerHaCm[stand].high,
    ]);
    stored.forEach((kg, k) => {
      expect(Math.abs(kg / (printed[k]! * KG_HA_CM_PER_LB_ACRE_IN) - 1)).toBeLessThan(FOUR_DIGITS);
    });
  });
});

describe('a paddock', () => {
  // Turn-in and residual heights in inches: each stored height lies in the printed range, retrieved.
  it.each([
    ['bluegrass-clover', 4, 4, 6, 1, 2, 'Maine, Appendix D: low growers'],
    ['timothy-legume', 6, 6, 8, 2, 3, 'Maine, Appendix D: tall growers'],
    ['ryegrass-clover', 6, 6, 8, 2, 2.5, 'Summer pasture: the four R’s, 2015; Ozarks, 2014'],
    ['orchardgrass-legume', 6, 8, 10, 3, 6, 'Maine; Summer pasture: the four R’s, 2015'],
    ['tall-fescue', 6, 8, 10, 2, 5, 'Maine; Summer pasture: the four R’s, 2015, half or less'],
    ['mixed', 6, 6, 8, 3, 4, 'When to graze spring pasture, 2010'],
  ])(
    'is entered in %s from %d in, best at %d to %d, and left at %d to %d (%s)',
    (id, least, from, to, low, high) => {
      const { firstPassCm, readyFromCm, readyHeightCm, residualHeightCm } = rowById(
        tables.forages,
        id,
      ).heights;
      expect(readyFromCm / CM_PER_IN).toBeCloseTo(least, 1);
      // University of Maine: the first pass of tall grasses at 4 to 5 in, of low ones at 3.
      const [first, last] = id === 'bluegrass-clover' ? [3, 3] : [4, 5];
      expect(firstPassCm / CM_PER_IN).toBeGreaterThanOrEqual(first - 0.02);
      expect(firstPassCm / CM_PER_IN).toBeLessThanOrEqual(last + 0.02);
      expect(readyHeightCm / CM_PER_IN).toBeGreaterThanOrEqual(from - 0.02);
      expect(readyHeightCm / CM_PER_IN).toBeLessThanOrEqual(to + 0.02);
      expect(residualHeightCm / CM_PER_IN).toBeGreaterThanOrEqual(low - 0.02);
      expect(residualHeightCm / CM_PER_IN).toBeLessThanOrEqual(high + 0.02);
    },
  );
});
