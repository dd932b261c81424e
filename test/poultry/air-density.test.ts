import { describe, expect, it } from '@jest/globals';
import { airDensityShare } from '../../shared/poultry/brooder-heat.js';

describe('airDensityShare', () => {
  it('is 1 at sea level and falls with height', () => {
    expect(airDensityShare(0)).toBe(1);
    expect(airDensityShare(-400)).toBeGreaterThan(1);
    expect(airDensityShare(3000)).toBeLessThan(airDensityShare(1000));
  });
});
