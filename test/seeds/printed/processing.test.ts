import { describe, expect, it } from '@jest/globals';
import { fToC, KG_PER_LB, L_PER_FT3 } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';

const { processing, heatStress } = tables;

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
