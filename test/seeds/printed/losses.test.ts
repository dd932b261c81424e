import { describe, expect, it } from '@jest/globals';
import { survivingShare } from '../../../shared/poultry/losses.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

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
