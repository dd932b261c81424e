import { describe, expect, it } from '@jest/globals';
import { bestGrazing } from '../support/best-grazing.js';
import { SMALL_CASES, smallCase } from '../support/small-cases.js';

describe('the walk beside the proven best of every order of moves', () => {
  it('takes seventeen twentieths and more from grass of what the best order does', () => {
    for (const each of SMALL_CASES.filter(({ isQuick }) => isQuick)) {
      const { walkKg, bestKg, needKg, orders } = bestGrazing(smallCase(each));
      expect(orders).toBeGreaterThan(50);
      expect(bestKg).toBeLessThan(walkKg);
      expect((needKg - walkKg) / (needKg - bestKg)).toBeGreaterThan(0.85);
    }
  });

  it('needs no search where the walk feeds no hay', () => {
    const { walkKg, orders } = bestGrazing(smallCase({ ...SMALL_CASES.at(-1)!, head: 1 }));
    expect(walkKg).toBeCloseTo(0, 6);
    expect(orders).toBe(0);
  });
});
