import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  adjustedDepletionShare,
  soilWater,
  stressCoefficient,
  totalAvailableWaterMm,
  type RootZone,
} from '../../shared/weather/soil-water.js';

// FAO Irrigation and Drainage Paper 56, 1998, chapter 8, eq. 82 to 85: equations and tables from memory; the
// example is worked by hand with the middle of the loam of Table 19 and a sward of 0.5 m.
const zone: RootZone = {
  fieldCapacity: 0.25,
  wiltingPoint: 0.12,
  rootDepthM: 0.5,
  depletionShare: 0.6,
  kc: 0.95,
};

describe('soil water of FAO-56 (from memory)', () => {
  it('holds 65 mm in 0.5 m of loam (eq. 82, by hand)', () => {
    expect(totalAvailableWaterMm(zone)).toBeCloseTo(65, 9); // 1000·(0.25 − 0.12)·0.5
  });

  it.each([
    [0, 1],
    [39, 1], // RAW = 0.6·65, eq. 83
    [50, 0.5769], // (65 − 50) ÷ (0.4·65)
    [58.5, 0.25],
    [65, 0],
    [80, 0],
  ])('leaves at %d mm missing %d of growth (eq. 84, by hand)', (depletionMm, stress) => {
    expect(stressCoefficient(depletionMm, 65, 0.6)).toBeCloseTo(stress, 4);
  });

  it.each([
    [0.6, 5, 0.6],
    [0.6, 4.75, 0.61],
    [0.6, 8, 0.48],
    [0.6, 0, 0.8],
    [0.1, 9, 0.1],
  ])('adjusts the share %d at %d mm a day to %d (Table 22, note)', (share, mm, adjusted) => {
    expect(adjustedDepletionShare(share, mm)).toBeCloseTo(adjusted, 9);
  });

  it('goes day by day from 38 mm missing (eq. 85, by hand)', () => {
    // 0.95·5 = 4.75 mm a day, p = 0.61, RAW 39.65 mm.
    // Day 1: no stress, 38 + 4.75 = 42.75. Day 2: K_s = 22.25 ÷ 25.35 = 0.87771; 42.75 + 4.1691 − 10 = 36.9191.
    // Day 3: no stress, 36.9191 + 4.75 − 50 < 0: 8.33 mm drain away.
    const { depletionMm, stress } = soilWater(
      zone,
      { rainMm: [0, 10, 50], referenceMm: [5, 5, 5] },
      38,
    );
    expect(depletionMm[0]!).toBeCloseTo(42.75, 9);
    expect(stress[1]!).toBeCloseTo(0.87771, 5);
    expect(depletionMm[1]!).toBeCloseTo(36.9191, 4);
    expect(stress[2]!).toBe(1);
    expect(depletionMm[2]!).toBe(0);
  });

  it('keeps between nothing and all of the water missing, and never grows more for less rain', () => {
    const rain = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), {
      minLength: 40,
      maxLength: 40,
    });
    fc.assert(
      fc.property(rain, fc.double({ min: 0, max: 9, noNaN: true }), (rainMm, mm) => {
        const referenceMm = new Float64Array(40).fill(mm);
        const wet = soilWater(zone, { rainMm, referenceMm });
        const dry = soilWater(zone, { rainMm: rainMm.map((each) => each / 2), referenceMm });
        expect([...wet.depletionMm].filter((missing) => !(0 <= missing && missing <= 65))).toEqual(
          [],
        );
        expect(dry.stress.findIndex((less, i) => !(less <= wet.stress[i]! + 1e-12))).toBe(-1);
      }),
    );
  });
});
