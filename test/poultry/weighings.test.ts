import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { raisedWeights } from '../../shared/poultry/raised-bird.js';
import { averageError, birdsToWeigh, fittedSpeed } from '../../shared/poultry/weighings.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const growth = birdGrowth(rowById(tables.growthTables, 'fast-2020'), 'male');
const weightsAt = (speed: number) =>
  raisedWeights(growth, { weightFactor: 0.75, feedFactor: 1, speed }, 84);

describe('birdsToWeigh', () => {
  // The usual rule n = (1.96·CV ÷ e)², as printed for the sizes of samples; a flock of 50 or 25.
  it.each([
    [0.1, 0.02, 1e9, 97],
    [0.1, 0.03, 1e9, 43],
    [0.1, 0.05, 1e9, 16],
    [0.1, 0.1, 1e9, 4],
    [0.15, 0.05, 1e9, 35],
    [0.1, 0.03, 50, 24],
    [0.1, 0.05, 25, 10],
  ])('of birds that differ by %d, to be within %d, out of %d: %d', (cv, near, flock, birds) => {
    // The rule for a flock starts from whole birds, so that it may come to one more.
    expect(birds - birdsToWeigh({ cv }, flock, near)).toBeGreaterThanOrEqual(0);
    expect(birds - birdsToWeigh({ cv }, flock, near)).toBeLessThanOrEqual(1);
  });

  it('are never more than there are', () => {
    expect(birdsToWeigh({ cv: 0.1 }, 1)).toBe(1);
    expect(birdsToWeigh({ cv: 0.1 }, 6)).toBeLessThanOrEqual(6);
  });
});

describe('averageError', () => {
  const { evenness } = tables.growing;
  it('is that of the scale alone when every bird is weighed', () => {
    expect(averageError(evenness, 12, 12)).toBeCloseTo(evenness.scaleShare, 9);
    expect(averageError(evenness, 12, 8)).toBeCloseTo(evenness.scaleShare, 9);
    expect(averageError(evenness, 1, 1)).toBeCloseTo(evenness.scaleShare, 9);
  });

  it('falls with every bird more', () => {
    for (let n = 1; n < 50; n++) {
      expect(averageError(evenness, n + 1, 50)).toBeLessThan(averageError(evenness, n, 50));
    }
  });
});

describe('fittedSpeed', () => {
  it('finds the speed of birds that grew at it', () => {
    const ages = fc.uniqueArray(fc.integer({ min: 10, max: 60 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(ages, fc.double({ min: 0.7, max: 1.4, noNaN: true }), (days, speed) => {
        const kg = weightsAt(speed);
        const weighed = days.map((ageDays) => ({ ageDays, kg: kg[ageDays]!, error: 0.03 }));
        expect(fittedSpeed(weighed, weightsAt).value).toBeCloseTo(speed, 3);
      }),
    );
  });

  it('changes nothing for birds that weigh what was planned', () => {
    const kg = weightsAt(1)[28]!;
    expect(fittedSpeed([{ ageDays: 28, kg, error: 0.03 }], weightsAt).value).toBe(1);
  });

  it('is surer of many weighings than of one, and counts the surer one more', () => {
    const kg = weightsAt(1);
    const one = { ageDays: 28, kg: kg[28]! * 0.9, error: 0.03 };
    const two = { ageDays: 35, kg: kg[35]! * 1.05, error: 0.01 };
    expect(fittedSpeed([one, two], weightsAt).error).toBeLessThan(
      fittedSpeed([one], weightsAt).error,
    );
    expect(fittedSpeed([one, two], weightsAt).value).toBeGreaterThan(1);
  });
});
