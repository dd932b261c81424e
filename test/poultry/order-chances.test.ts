import { describe, expect, it } from '@jest/globals';
import { orderChances } from '../../shared/poultry/losses.js';

describe('birdsToOrder', () => {
  const odds = (wanted: number, lossPercent: number, togetherness: number, sexShare = 1) => ({
    ...{ wanted, survivingShare: 1 - lossPercent / 100, togetherness, sexShare },
  });

  it('is more than 5 % extra (common practice, no source), which is a coin toss at 5 % lost', () => {
    expect(orderChances(odds(100, 5, 0.02)).enough(105)).toBeGreaterThan(0.4);
    expect(orderChances(odds(100, 5, 0.02)).enough(105)).toBeLessThan(0.65);
  });
});
