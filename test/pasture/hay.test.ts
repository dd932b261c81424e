import { describe, expect, it } from '@jest/globals';
import { hayNeededKg } from '../../shared/pasture/hay.js';
import { lbToKg } from '../support/conversions.js';

describe('hayNeededKg', () => {
  it('divides by both losses, not by their sum (by hand: 1000 ÷ 0.88 ÷ 0.8 ÷ 0.87 = 1632.7)', () => {
    const kg = hayNeededKg({
      dryMatterKg: 1000,
      dryMatterShare: 0.88,
      storeLoss: 0.2,
      feedLoss: 0.13,
    });
    expect(Math.abs(kg - 1632.7)).toBeLessThan(0.05);
  });

  it.each([
    // As extension leaflets work them: “about 27 lb” of 24 lb at 88 %, 24.7 lb of 22 lb at 89 %.
    [24, 0.88, 27, 0.5],
    [22, 0.89, 24.7, 0.05],
    // Florida: a cow of 1,200 lb at 2 % in 150 days, 1.8 tons of dry matter.
    [1200 * 0.02 * 150, 1, 3600, 0.5],
  ])('is as printed for %d lb of dry matter at %d', (dryLb, dryMatterShare, printedLb, within) => {
    const kg = hayNeededKg({
      dryMatterKg: lbToKg(dryLb),
      dryMatterShare,
      storeLoss: 0,
      feedLoss: 0,
    });
    expect(Math.abs(kg / lbToKg(1) - printedLb)).toBeLessThan(within);
  });
});
