import { describe, expect, it } from '@jest/globals';
import { chillingLimitH } from '../../shared/poultry/processing.js';
import { fToC, KG_PER_LB, L_PER_FT3 } from '../../shared/units/convert.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const { processing, heatStress } = tables;

describe('chillingLimitH', () => {
  // To 40 °F within 4 hours up to 4 lb, 6 hours up to 8 lb, 8 hours above (Colorado rule 8 CCR 1202-16;
  // the former federal weight schedule).
  it.each([
    [2, 4],
    [3.9, 4],
    [4.1, 6],
    [7.9, 6],
    [8.1, 8],
    [20, 8],
  ])('gives a carcass of %d lb %d hours', (lb, hours) => {
    expect(chillingLimitH(processing.chilling.rows, lbToKg(lb))).toBe(hours);
  });

  it('chills to 40 °F', () => {
    expect(Math.abs(processing.chilling.targetC - fToC(40))).toBeLessThan(0.05);
  });
});

describe('processing table', () => {
  it('keeps birds 8 to 12 hours without feed (meat industry articles)', () => {
    expect([processing.withdrawalH.low, processing.withdrawalH.high]).toEqual([8, 12]);
    expect(processing.withdrawalH.value).toBeGreaterThanOrEqual(8);
    expect(processing.withdrawalH.value).toBeLessThanOrEqual(12);
  });

  it('takes half to all of the carcass weight in ice (common practice, no source)', () => {
    expect([processing.ice.low, processing.ice.high]).toEqual([0.5, 1]);
    expect(processing.ice.mark).toBe('common-practice');
  });

  it('packs at most 35 lb in a cubic foot of freezer (North Carolina State University, 2004)', () => {
    const kgPerL = (35 * KG_PER_LB) / L_PER_FT3;
    expect(Math.abs(processing.packing.high - kgPerL)).toBeLessThan(0.005);
    expect(processing.packing.kgPerL).toBeLessThan(kgPerL); // whole birds pack looser
  });

  it('lets immersion chilling add 3 to 10 % water (from memory)', () => {
    expect(processing.waterUptake.share).toBeGreaterThanOrEqual(0.03);
    expect(processing.waterUptake.high).toBe(0.1);
    expect(processing.waterUptake.mark).toBe('from-memory');
  });
});

describe('heat stress', () => {
  it('begins at 80 °F (extension, farm press) and is serious above 90 °F', () => {
    expect(Math.abs(heatStress.beginsC - fToC(80))).toBeLessThan(0.05);
    expect(Math.abs(heatStress.seriousC - fToC(90))).toBeLessThan(0.05);
  });
});
