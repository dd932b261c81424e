import { describe, expect, it } from '@jest/globals';
import { mustBringMinor } from '../../shared/money/break-even.js';

describe('mustBringMinor', () => {
  it.each([
    // A growers' sheet of North Carolina, 3.6 lb sold a bird: on conventional and on organic feed.
    [[120, 320, 600, 420, 50, 500, 300], 3.6, 642],
    [[120, 695, 600, 420, 50, 500, 300], 3.6, 746],
    // PNW 665, Table 1: Cornish cross, and slow ones. Their weights are rounded.
    [[2451], 4.71, 520],
    [[2755], 3.5, 787],
    // A keeper's sheet of 2008, which rounds 22.22 to 22.
    [[160, 960, 700, 150, 252], 1, 2222],
    // A pullet of 20 weeks, chick and feed (2002).
    [[110, 238], 1, 348],
  ])('spreads %j over %p as the sheet prints it', (costs, amount, printed) => {
    expect(Math.abs(mustBringMinor(costs, amount) - printed)).toBeLessThanOrEqual(1);
  });
});
