import { describe, expect, it } from '@jest/globals';
import { birdGrowth } from '../../../shared/poultry/growth.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

const table = rowById(tables.growthTables, 'heritage-1957');
const meanG = (day: number): number =>
  500 * (birdGrowth(table, 'male').weightKg[day]! + birdGrowth(table, 'female').weightKg[day]!);

describe('birdGrowth of the random-bred meat type of 1957', () => {
  const rows = [
    [21, 176],
    [42, 539],
    [56, 809],
    [70, 1117],
    [84, 1430],
  ] as const;

  it.each(rows)(
    'gives %d days %d g on the feeds of its time (Poultry Science 82, 2003)',
    (day, grams) => {
      expect(meanG(day)).toBeCloseTo(grams, 6); // every printed row is met
    },
  );

  it('holds every printed row and no other, the hatch row aside', () => {
    expect(rows).toHaveLength(5);
    expect(table.asHatched).toHaveLength(6);
  });

  it('carries the factor 1.22 that modern feed gave the same birds (Poultry Science 73, 1994)', () => {
    expect(table.atHome?.weightFactor).toBe(1.22);
  });

  it('reaches the 2.5 to 3 lb that an old handbook gives medium breeds at 13 weeks (public domain)', () => {
    // 1134 to 1361 g; the 1957 meat type is a little heavier than the breeds of that book.
    expect(meanG(91)).toBeGreaterThan(1134);
    expect(meanG(91)).toBeLessThan(1361 * 1.2);
  });
});
