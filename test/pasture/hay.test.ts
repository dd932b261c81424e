import { describe, expect, it } from '@jest/globals';
import { hayNeededKg } from '../../shared/pasture/hay.js';

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
});
