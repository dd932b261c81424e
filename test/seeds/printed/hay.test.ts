import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { kgToLb } from '../../support/conversions.js';
import { tables } from '../../support/factories.js';

const { hay } = tables.pasture;

describe('losses of hay', () => {
  // Feeding: "Bale Feeder Design" (Michigan and Oklahoma trials), "Hay Feeder Design Effect on Hay Waste" (Bell
  // and Martz 1973), "Manage feeders to minimize hay waste". Storing: "A Bale Saved is a Bale in the Belly", 2025.
  it.each([
    ['cone', 3.5, 5.3],
    ['ring', 6.1, 20.5],
    ['ground', 25, 45],
  ])('are at feeding by %s %d to %d %% in the trials', (id, low, high) => {
    const row = rowById(hay.feeding, id);
    expect([row.low, row.high]).toEqual([low / 100, high / 100]);
    expect(row.loss).toBeGreaterThanOrEqual(row.low);
    expect(row.loss).toBeLessThanOrEqual(row.high);
  });

  it.each([
    ['barn', 2, 5],
    ['outside', 20, 50],
  ])('are in store, %s, %d to %d %% (A Bale Saved, 2025)', (id, low, high) => {
    const row = rowById(hay.storing, id);
    expect([row.low, row.high]).toEqual([low / 100, high / 100]);
  });

  it('are unrolled 12 to 25 %, marked from memory', () => {
    expect(rowById(hay.feeding, 'unrolled')).toMatchObject({
      low: 0.12,
      high: 0.25,
      mark: 'from-memory',
    });
  });
});

describe('bales', () => {
  it('are in a small square of 40 to 75 lb (weak web source)', () => {
    const lb = kgToLb(rowById(hay.bales, 'small-square').kg);
    expect(lb).toBeGreaterThan(40);
    expect(lb).toBeLessThan(75);
  });
});
