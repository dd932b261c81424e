import { describe, expect, it } from '@jest/globals';
import { blendedCv, bothSexesCv, nearShare, spreadOf } from '../../shared/poultry/evenness.js';

const GRAMS_PER_OUNCE = 28.349523125;
const inKg = (ounces: readonly number[]) => ounces.map((oz) => (oz * GRAMS_PER_OUNCE) / 1000);

describe('spreadOf', () => {
  // Single weights of ten birds a group, ounces (KEEPERS_WEIGHINGS_2010); spread reckoned from them.
  it.each([
    [
      'Cornish, 14 days',
      [11.25, 9.25, 11, 12.25, 9.75, 8.5, 9.25, 12.5, 11.25, 10.25],
      298.4,
      12.7,
      5,
    ],
    ['Barred Rock, 21 days', [6.5, 6, 7, 5.75, 6, 6.5, 4.5, 5.5, 5.75, 5.75], 168, 11.4, 8],
    ['Light Brahma, 14 days', [4, 4, 3.5, 4.5, 4.75, 4, 4, 4.75, 4.25, 4.25], 119.1, 9.2, 7],
    ['Light Brahma, 21 days', [7.25, 7.75, 6.25, 8, 7, 8.5, 7.5, 6.5, 7.75, 6.75], 207.7, 9.7, 7],
  ])('%s', (_, ounces, grams, cvPercent, near) => {
    const spread = spreadOf(inKg(ounces));
    expect(spread.meanKg * 1000).toBeCloseTo(grams, 1);
    expect(spread.cv! * 100).toBeCloseTo(cvPercent, 1);
    expect(spread.near).toBe(near);
  });

  it('of one bird is not known', () => {
    expect(spreadOf([1.2])).toEqual({ meanKg: 1.2, cv: undefined, near: 1 });
  });
});

describe('nearShare', () => {
  it.each([
    [5, 95.4],
    [8, 78.9],
    [10, 68.3],
    [12, 59.5],
    [15, 49.5],
  ])('of birds that differ by %d %%: %d %%', (cv, percent) => {
    expect(nearShare(cv / 100) * 100).toBeCloseTo(percent, 1);
  });
});

describe('blendedCv', () => {
  it('is the usual one until birds are weighed, and goes to theirs with every bird', () => {
    expect(blendedCv(0.1, 10, { cv: undefined, birds: 0 })).toBe(0.1);
    const of = (birds: number) => blendedCv(0.1, 10, { cv: 0.2, birds });
    expect(of(2)).toBeGreaterThan(0.1);
    for (const birds of [2, 5, 10, 50]) expect(of(birds + 1)).toBeGreaterThan(of(birds));
    expect(of(10_000)).toBeCloseTo(0.2, 3);
  });
});

describe('bothSexesCv', () => {
  it('comes to 10.6 % for 8 % in each sex, cocks 15 % heavier', () => {
    expect(bothSexesCv(0.08, 0.07) * 100).toBeCloseTo(10.6, 1);
  });
});
