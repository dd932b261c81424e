import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

const meanKg = (id: string, day: number): number => {
  const table = rowById(tables.growthTables, id);
  return (
    (birdGrowth(table, 'male').weightKg[day]! + birdGrowth(table, 'female').weightKg[day]!) / 2
  );
};

describe('birdGrowth across the eras', () => {
  // Means at six weeks. 1984 and 2020 as printed; 1994 from memory.
  it.each([
    ['fast-1984', 1.56, 0.001, '1984'],
    ['fast-1994', 1.915, 0.001, '1994, from memory'],
    ['heritage-1957', 0.539, 0.001, 'Poultry Science 82, 2003'],
  ])('keeps %s at %d kg at 42 days (within %d kg, %s)', (id, kg, tolerance) => {
    expect(Math.abs(meanKg(id, 42) - kg)).toBeLessThanOrEqual(tolerance);
  });

  it('keeps the 2020 trial at least 1.8 times the 1984 table at six weeks', () => {
    // 2.823 kg at 41 days (Poultry Science 99(6), 2020) over 1.56 kg at 42 days (1984).
    expect(2.823 / 1.56).toBeGreaterThan(1.8);
    expect(meanKg('fast-2020', 42) / meanKg('fast-1984', 42)).toBeGreaterThan(1.8);
  });

  it('never lets the order of the eras change between 2 and 8 weeks', () => {
    for (let day = 14; day <= 56; day++) {
      expect(meanKg('heritage-1957', day)).toBeLessThan(meanKg('fast-1984', day));
      expect(meanKg('fast-1984', day)).toBeLessThan(meanKg('fast-1994', day));
      expect(meanKg('fast-1994', day)).toBeLessThan(meanKg('fast-2020', day));
    }
  });
});
