import { describe, expect, it } from '@jest/globals';
import { airDensityShare } from '../../shared/poultry/brooder-heat.js';

describe('airDensityShare', () => {
  it('gives 81.8 kPa at 1800 m (FAO-56, example 2)', () => {
    expect(Math.abs(101.3 * airDensityShare(1800) - 81.8)).toBeLessThanOrEqual(0.05); // one decimal
  });

  it('gives a psychrometric constant of 0.054 kPa/°C at 1800 m (FAO-56, example 2)', () => {
    expect(Math.abs(0.665e-3 * 101.3 * airDensityShare(1800) - 0.054)).toBeLessThanOrEqual(0.0005);
  });

  it('gives 0.0674 kPa/°C at 2 m (FAO-56, example 17)', () => {
    expect(Math.abs(0.665e-3 * 101.3 * airDensityShare(2) - 0.0674)).toBeLessThanOrEqual(0.0001);
  });

  it('is 1 at sea level and falls with height', () => {
    expect(airDensityShare(0)).toBe(1);
    expect(airDensityShare(-400)).toBeGreaterThan(1);
    expect(airDensityShare(3000)).toBeLessThan(airDensityShare(1000));
  });
});
