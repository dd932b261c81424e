import { describe, expect, it } from '@jest/globals';
import { hayNeededKg } from '../../shared/pasture/hay.js';
import { rowById } from '../../shared/tables/tables.js';
import { M_PER_FT } from '../../shared/units/convert.js';
import { kgToLb, lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';
import { figures } from '../support/figures.js';

const { hay } = tables.pasture;
const { hay: published } = figures<{ hay: { baleDensityKgPerM3: number } }>('pasture-figures.json');
const noLoss = { storeLoss: 0, feedLoss: 0 };
const hayLb = (dryMatterLb: number, dryMatterShare: number, losses = noLoss): number =>
  kgToLb(hayNeededKg({ dryMatterKg: lbToKg(dryMatterLb), dryMatterShare, ...losses }));

describe('hayNeededKg', () => {
  it('is 1.8 tons of dry matter for a cow of 1,200 lb at 2 % in 150 days (UF/IFAS 2024)', () => {
    expect(hayLb(0.02 * 1200 * 150, 1) / 2000).toBeCloseTo(1.8, 9);
  });

  it.each([
    [24, 0.88, 27, 0.5, 'How Much Forage Does a Beef Cow Consume Each Day?, about'],
    [22, 0.89, 24.7, 0.05, 'Forage intake in beef cattle, 2022'],
  ])('makes %d lb of dry matter at a dry share of %d %d lb as fed (± %d; %s)', (...row) => {
    const [dryLb, share, lb, off] = row;
    expect(Math.abs(hayLb(dryLb, share) - lb)).toBeLessThanOrEqual(off);
  });

  // University of Illinois Extension, "Bale Feeder Design", trial table 2 (Oklahoma), retrieved: waste of a
  // bale of 1,200 lb.
  it.each([
    ['cone', 5.3, 63.6],
    ['sheeted ring', 13.0, 156],
    ['open ring', 20.5, 246],
    ['poly ring', 21.0, 252],
  ])(
    'wastes in a %s, %d %%, %d lb of a bale of 1,200 lb (Bale Feeder Design)',
    (_, percent, waste) => {
      // What is left of the bale takes the whole bale to feed.
      const losses = { storeLoss: 0, feedLoss: percent / 100 };
      expect(hayLb(1200 - waste, 1, losses)).toBeCloseTo(1200, 6);
    },
  );

  it('divides by both losses, not by their sum (by hand: 1000 ÷ 0.88 ÷ 0.8 ÷ 0.87 = 1632.7)', () => {
    const kg = hayNeededKg({
      dryMatterKg: 1000,
      dryMatterShare: 0.88,
      storeLoss: 0.2,
      feedLoss: 0.13,
    });
    expect(Math.abs(kg - 1632.7)).toBeLessThan(0.05);
  });
});

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
  const roundKg = (diameterFt: number, widthFt: number): number =>
    (Math.PI / 4) *
    (diameterFt * M_PER_FT) ** 2 *
    widthFt *
    M_PER_FT *
    published.baleDensityKgPerM3;

  it.each([
    ['round-4x4', 4, 4],
    ['round-5x4', 5, 4],
    ['round-5x5', 5, 5],
  ])('have in %s of the table the weight of their size and density', (id, across, wide) => {
    expect(Math.abs(rowById(hay.bales, id).kg / roundKg(across, wide) - 1)).toBeLessThan(0.001);
  });

  it('are in a small square of 40 to 75 lb (weak web source)', () => {
    const lb = kgToLb(rowById(hay.bales, 'small-square').kg);
    expect(lb).toBeGreaterThan(40);
    expect(lb).toBeLessThan(75);
  });
});
