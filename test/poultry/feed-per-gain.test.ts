import { describe, expect, it } from '@jest/globals';
import { feedPerGain } from '../../shared/poultry/feed-per-gain.js';

describe('feedPerGain', () => {
  it.each([
    // Broilers from 29 to 46 days; males to 42 days in mild and in hot air; a hundred birds.
    [{ feedKg: 2.874, startKg: 1.316, endKg: 3.093 }, 1.62],
    [{ feedKg: 5.38944, startKg: 0.03837, endKg: 3.70142 }, 1.47],
    [{ feedKg: 4.93206, startKg: 0.03828, endKg: 3.21529 }, 1.55],
    [{ feedKg: 350, startKg: 0, endKg: 250 }, 1.4],
  ])('of %j is what its table prints', (of, printed) => {
    expect(Math.abs(feedPerGain(of)! - printed)).toBeLessThanOrEqual(0.01);
  });

  it('says nothing where nothing was gained', () => {
    expect(feedPerGain({ feedKg: 1, startKg: 2, endKg: 2 })).toBeUndefined();
  });
});
