import { describe, expect, it } from '@jest/globals';
import { orderChances, survivingShare } from '../../shared/poultry/losses.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const rates = (id: string) => {
  const row = rowById(tables.losses, id);
  return {
    firstWeekShare: row.firstWeekPercent / 100,
    laterShare: row.laterPercent / 100,
    laterToDay: row.laterToDay,
    layYearShare: (row.layYearPercent ?? 0) / 100,
  };
};

describe('survivingShare', () => {
  it('leaves 206 of 208 placed when 2 died, 0.96 % (a farm’s record)', () => {
    const record = { firstWeekShare: 2 / 208, laterShare: 0, laterToDay: 56, layYearShare: 0 };
    expect(Math.abs((2 / 208) * 100 - 0.96)).toBeLessThan(0.005);
    expect(208 * survivingShare(record, 7)).toBeCloseTo(206, 9);
    expect(208 * survivingShare(record, 21)).toBeCloseTo(206, 9);
  });

  it('loses 5 % of a fast-growing batch: between the targets of 3 to 4 % and reports of 6 % and more', () => {
    // Performance article (second-hand): 3 % in 10 days, 4 % in all. Small flocks: 6, 10, 14, 20 %.
    const lost = 1 - survivingShare(rates('fast-meat'), 56);
    expect(lost).toBeGreaterThan(0.04);
    expect(lost).toBeLessThan(0.06);
  });

  it('loses under 5 % of colored strains on pasture (farm trial FNC09-771, 2010)', () => {
    expect(1 - survivingShare(rates('slow-meat'), 84)).toBeLessThan(0.05);
  });

  it('keeps 96 to 98 % of pullets through the growing period (layer guide, 2001, second-hand)', () => {
    const kept = survivingShare(rates('layer'), 126);
    expect(kept).toBeGreaterThanOrEqual(0.96);
    expect(kept).toBeLessThanOrEqual(0.98);
  });

  it('loses between 4.4 and 8.8 % of layers to 60 weeks (national summaries for 2001 and 1985)', () => {
    const lost = 1 - survivingShare(rates('layer'), 60 * 7);
    expect(lost).toBeGreaterThan(0.044);
    expect(lost).toBeLessThan(0.088);
  });
});

describe('birdsToOrder', () => {
  const odds = (wanted: number, lossPercent: number, togetherness: number, sexShare = 1) => ({
    ...{ wanted, survivingShare: 1 - lossPercent / 100, togetherness, sexShare },
  });

  // Beta-binomial survivors, worked out apart from this program: wanted, percent lost,
  // over-dispersion, chance, chicks to order.
  it.each([
    [25, 5, 0.02, 0.5, 26],
    [25, 5, 0.02, 0.8, 27],
    [50, 5, 0.02, 0.5, 52],
    [50, 5, 0.02, 0.8, 54],
    [50, 5, 0.02, 0.9, 56],
    [100, 5, 0.02, 0.5, 104],
    [100, 5, 0.02, 0.8, 108],
    [100, 5, 0.02, 0.9, 111],
    [10, 3, 0, 0.9, 11],
    [25, 10, 0.05, 0.9, 32],
    [50, 20, 0, 0.9, 68],
    [50, 20, 0.1, 0.9, 81],
    [100, 10, 0.02, 0.9, 120],
    [100, 20, 0.05, 0.9, 149],
  ])(
    'for %d at %d %% lost, over-dispersion %d, chance %d: %d',
    (wanted, loss, rho, chance, order) => {
      expect(
        Math.abs(orderChances(odds(wanted, loss, rho)).toOrder(chance) - order),
      ).toBeLessThanOrEqual(order < 60 ? 0 : 1);
    },
  );

  // Pullets: sexed right with a chance, each by itself, then losses with over-dispersion 0.02.
  it.each([
    [6, 5, 0.95, 8],
    [12, 5, 0.9, 16],
    [12, 10, 0.95, 16],
    [20, 5, 0.95, 24],
    [25, 10, 0.9, 35],
    [12, 5, 0.5, 32],
    [25, 5, 0.5, 63],
  ])(
    'for %d pullets at %d %% lost, %d sexed right, nine in ten: %d',
    (wanted, loss, sexed, order) => {
      expect(orderChances(odds(wanted, loss, 0.02, sexed)).toOrder(0.9)).toBe(order);
    },
  );

  it('is more than 5 % extra (common practice, no source), which is a coin toss at 5 % lost', () => {
    expect(orderChances(odds(100, 5, 0.02)).enough(105)).toBeGreaterThan(0.4);
    expect(orderChances(odds(100, 5, 0.02)).enough(105)).toBeLessThan(0.65);
  });
});
