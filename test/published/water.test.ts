import { describe, expect, it } from '@jest/globals';
import { waterByAgeL, waterHeatFactor } from '../../shared/poultry/water.js';
import { L_PER_US_GAL } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

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

describe('waterHeatFactor', () => {
  const heat = tables.water.heat;

  it('raises 8.25 L to between 10.7 and 12.4 L above 32 °C, 30 to 50 % more (second-hand)', () => {
    expect(8.25 * waterHeatFactor(heat, 32)).toBeGreaterThanOrEqual(10.7);
    expect(8.25 * waterHeatFactor(heat, 32)).toBeLessThanOrEqual(12.4);
    expect(8.25 * waterHeatFactor(heat, 32, heat.riseLow)).toBeCloseTo(10.725, 6); // + 30 %
  });

  it('doubles at the high end, from 250 to 500 ml at 32 °C (Kentucky manual, Table 12.1)', () => {
    // 6.6 and 13.21 US gallons for 100 birds a day.
    expect(Math.abs((13.21 * L_PER_US_GAL * 1000) / 100 - 500)).toBeLessThan(1);
    expect(Math.abs((6.6 * L_PER_US_GAL * 1000) / 100 - 250)).toBeLessThan(1);
    expect(250 * waterHeatFactor(heat, 32, heat.riseHigh)).toBeCloseTo(500, 6);
  });

  it('leaves water alone up to 21 °C (second-hand)', () => {
    expect(waterHeatFactor(heat, 21)).toBe(1);
    expect(waterHeatFactor(heat, -10)).toBe(1);
  });
});
