import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// FAO Irrigation and Drainage Paper 56, 1998, chapter 8, eq. 82 to 85: equations and tables from memory; the
// example is worked by hand with the middle of the loam of Table 19 and a sward of 0.5 m.

describe('soil water of FAO-56 (from memory)', () => {
  // Table 19, volumes at field capacity and wilting point, from memory: each stored soil is the middle.
  it.each([
    ['sand', 0.07, 0.17, 0.02, 0.07],
    ['loamy-sand', 0.11, 0.19, 0.03, 0.1],
    ['sandy-loam', 0.18, 0.28, 0.06, 0.16],
    ['loam', 0.2, 0.3, 0.07, 0.17],
    ['silt-loam', 0.22, 0.36, 0.09, 0.21],
    ['silt', 0.28, 0.36, 0.12, 0.22],
    ['silt-clay-loam', 0.3, 0.37, 0.17, 0.24],
    ['silty-clay', 0.3, 0.42, 0.17, 0.29],
    ['clay', 0.32, 0.4, 0.2, 0.24],
  ])('holds in %s %d to %d, wilting at %d to %d (Table 19, from memory)', (id, ...range) => {
    const soil = rowById(tables.soils, id);
    expect(soil.fieldCapacity).toBeCloseTo((range[0]! + range[1]!) / 2, 9);
    expect(soil.wiltingPoint).toBeCloseTo((range[2]! + range[3]!) / 2, 9);
  });

  it('roots a grazed sward 0.5 to 1.5 m with p 0.60 and K_c 0.85 to 1.05 (Tables 12 and 22, from memory)', () => {
    for (const { water } of tables.forages) {
      expect(water.rootDepthM).toBeGreaterThanOrEqual(0.5);
      expect(water.rootDepthM).toBeLessThanOrEqual(1.5);
      expect(water.depletionShare).toBe(0.6);
      expect(water.kc).toBeGreaterThanOrEqual(0.85);
      expect(water.kc).toBeLessThanOrEqual(1.05);
      expect(water.mark).toBe('from-memory');
    }
  });
});
