import { beforeAll, describe, expect, it } from '@jest/globals';
import type { Highs } from 'highs';
import { planBuying } from '../../shared/buying/plan-buying.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { buyingProgram, SHORT_COST } from '../support/buying-program.js';
import { randomFeeds, type FeedsSize } from '../support/random-feeds.js';
import { solver } from '../support/outside-solver.js';

const CASES = 4;
const SMALL = { days: 16, handDays: 2, keepsDays: 8, stock: true };

describe('planBuying against a proven optimum', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await solver();
  });

  /** What each plan costs over the least that a general-purpose solver proves, smallest coins. */
  function gaps(size: FeedsSize): { over: number; least: number }[] {
    return Array.from({ length: CASES }, (_, k) => {
      const feeds = randomFeeds(seededRandom(k + 1), size);
      const solved = highs.solve(buyingProgram(feeds), { mip_rel_gap: 0 });
      expect(solved.Status).toBe('Optimal');
      const plan = planBuying(feeds.problem);
      const shortKg = plan.short.reduce((sum, { kg }) => sum + kg, 0);
      const least = solved.ObjectiveValue;
      return { over: plan.cost + SHORT_COST * shortKg - least, least };
    });
  }

  it.each<[string, FeedsSize]>([
    ['one feed of one supplier', { ...SMALL, suppliers: 1, items: 1, offers: 1 }],
    ['one feed of two suppliers', { ...SMALL, suppliers: 2, items: 1, offers: 2 }],
    ['three feeds that share trips', { ...SMALL, suppliers: 1, items: 3, offers: 1 }],
  ])('costs the same as the solver’s proven best for %s', (_, size) => {
    for (const { over } of gaps(size)) expect(over).toBeCloseTo(0, 1);
  });

  it('stays within 1 % of it in sum for three feeds of two suppliers, and is never below', () => {
    const all = gaps({ ...SMALL, suppliers: 2, items: 3, offers: 2 });
    // Needs that nothing can be bought for count the same in both.
    for (const { over } of all) expect(over).toBeGreaterThan(-0.1);
    const money = all.reduce((sum, { least }) => sum + (least % SHORT_COST), 0);
    expect(all.reduce((sum, { over }) => sum + over, 0)).toBeLessThanOrEqual(0.01 * money);
  });

  it('stays within 1 % of it in sum where lower prices count all bags of a trip together', () => {
    const all = gaps({ ...SMALL, suppliers: 1, items: 3, offers: 1, countsTogether: true });
    for (const { over } of all) expect(over).toBeGreaterThan(-0.1);
    const money = all.reduce((sum, { least }) => sum + (least % SHORT_COST), 0);
    expect(all.reduce((sum, { over }) => sum + over, 0)).toBeLessThanOrEqual(0.01 * money);
  });

  it('finds the proven best in most stores that are too small for a full trip', () => {
    const all = gaps({ ...SMALL, suppliers: 1, items: 3, offers: 1, storeKg: 140 });
    for (const { over } of all) expect(over).toBeGreaterThan(-0.1);
    expect(all.filter(({ over }) => over < 0.1).length).toBeGreaterThanOrEqual(0.75 * CASES);
  });
});
