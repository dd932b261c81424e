import { describe, expect, it } from '@jest/globals';
import { waterByAgeL } from '../../../shared/poultry/water.js';
import { tables } from '../../support/factories.js';

const hens = waterByAgeL(tables.water.layers);

describe('waterByAgeL', () => {
  it.each([
    [4, 100],
    [12, 160],
    [18, 200],
  ])('gives a pullet of %d weeks %d ml a day at 21 °C (second-hand)', (weeks, mL) => {
    expect(hens[7 * weeks]! * 1000).toBeCloseTo(mL, 6);
  });

  it('gives a hen in full lay 270 ml a day at 21 °C (second-hand)', () => {
    expect(hens[200]! * 1000).toBeCloseTo(270, 6);
  });
});
