import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { raisedWeights } from '../../shared/poultry/raised-bird.js';
import { averageError, birdsToWeigh, fittedSpeed, openAt } from '../../shared/poultry/weighings.js';
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

/** Nothing is known of them before they are weighed. */
const UNKNOWN = { value: 1, error: 1e6 };
const { flocksApart, wanderDays } = tables.judgements.birds;

describe('fittedSpeed', () => {
  it('finds the speed of birds that grew at it', () => {
    const ages = fc.uniqueArray(fc.integer({ min: 10, max: 60 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(ages, fc.double({ min: 0.7, max: 1.4, noNaN: true }), (days, speed) => {
        const kg = weightsAt(speed);
        const weighed = days.map((ageDays) => ({ ageDays, kg: kg[ageDays]!, error: 0.03 }));
        expect(fittedSpeed(weighed, weightsAt, UNKNOWN).value).toBeCloseTo(speed, 3);
      }),
    );
  });

  it('changes nothing for birds that weigh what was planned', () => {
    const kg = weightsAt(1)[28]!;
    expect(fittedSpeed([{ ageDays: 28, kg, error: 0.03 }], weightsAt, UNKNOWN).value).toBe(1);
  });

  it('is surer of many weighings than of one, and counts the surer one more', () => {
    const kg = weightsAt(1);
    const one = { ageDays: 28, kg: kg[28]! * 0.9, error: 0.03 };
    const two = { ageDays: 35, kg: kg[35]! * 1.05, error: 0.01 };
    expect(fittedSpeed([one, two], weightsAt, UNKNOWN).error).toBeLessThan(
      fittedSpeed([one], weightsAt, UNKNOWN).error,
    );
    expect(fittedSpeed([one, two], weightsAt, UNKNOWN).value).toBeGreaterThan(1);
  });
});

describe('the usual pace and weighings together', () => {
  const usual = { value: 1, error: 0.15 };
  const at = (birds: number, ageDays: number, times: number) => ({
    ageDays,
    kg: weightsAt(1)[ageDays]! * times,
    error: openAt(averageError(tables.growing.evenness, birds, 1000), wanderDays.value, ageDays),
  });

  it('lie between, the nearer to the weighing the more birds, and the older, it is of', () => {
    const own = fittedSpeed([at(10, 28, 0.8)], weightsAt, UNKNOWN).value;
    const speeds = [at(1, 10, 0.8), at(10, 10, 0.8), at(10, 28, 0.8), at(100, 45, 0.8)].map(
      (each) => fittedSpeed([each], weightsAt, usual),
    );
    expect(own).toBeLessThan(speeds[2]!.value);
    for (let k = 1; k < speeds.length; k++) {
      expect(speeds[k]!.value).toBeLessThan(speeds[k - 1]!.value);
      expect(speeds[k]!.error).toBeLessThan(speeds[k - 1]!.error);
    }
  });
});

describe('open weights of chicks', () => {
  /** Average weights, kg, of the chicks of each diet that lived to 21 days (CHICK_WEIGHTS_1990). */
  const DIETS = [
    { birds: 16, kg: { 8: 0.0816, 10: 0.0972, 12: 0.1144, 14: 0.1273 }, at21: 0.1777 },
    { birds: 10, kg: { 8: 0.0917, 10: 0.1085, 12: 0.1313, 14: 0.1419 }, at21: 0.2147 },
    { birds: 10, kg: { 8: 0.0984, 10: 0.1171, 12: 0.1444, 14: 0.1645 }, at21: 0.2703 },
    { birds: 9, kg: { 8: 0.1059, 10: 0.1269, 12: 0.1541, 14: 0.1644 }, at21: 0.2386 },
  ] as const;
  const DAYS = [[8], [10], [14], [8, 12], [8, 10, 12, 14]] as const;
  const usual = { value: 1, error: flocksApart.value };

  // Neither table was made from these chicks.
  const forecasts = (['heritage-1957', 'brown-pullet-1994'] as const).flatMap((table) => {
    const row = rowById(tables.growthTables, table);
    const at = (speed: number) => {
      const [male, female] = (['male', 'female'] as const).map((sex) =>
        raisedWeights(birdGrowth(row, sex), { weightFactor: 1, feedFactor: 1, speed }, 21),
      );
      return male!.map((kg, day) => (kg + female![day]!) / 2);
    };
    return DIETS.flatMap((diet) =>
      DAYS.map((days) => {
        const weighed = days.map((ageDays) => ({
          ageDays,
          kg: diet.kg[ageDays],
          average: averageError(tables.growing.evenness, diet.birds, 1000),
        }));
        const fit = (wander: number, pace: typeof usual) =>
          fittedSpeed(
            weighed.map(({ average, ...each }) => ({
              ...each,
              error: openAt(average, wander, each.ageDays),
            })),
            at,
            pace,
          );
        const blended = fit(wanderDays.value, usual);
        const kgAt = (speed: number) => at(Math.min(1.45, Math.max(0.65, speed)))[21]!;
        return {
          off: Math.log(kgAt(blended.value) / diet.at21),
          offWithout: Math.log(kgAt(fit(0, UNKNOWN).value) / diet.at21),
          offPlanned: Math.log(kgAt(1) / diet.at21),
          isWithin:
            kgAt(blended.value - 1.96 * blended.error) <= diet.at21 &&
            diet.at21 <= kgAt(blended.value + 1.96 * blended.error),
        };
      }),
    );
  });
  const size = (errors: readonly number[]): number =>
    Math.sqrt(errors.reduce((sum, each) => sum + each * each, 0) / errors.length);

  it('are forecast nearer by both together than by the table, or by the weighings, alone', () => {
    const both = size(forecasts.map(({ off }) => off));
    expect(both).toBeLessThan(size(forecasts.map(({ offWithout }) => offWithout)));
    expect(both).toBeLessThan(size(forecasts.map(({ offPlanned }) => offPlanned)));
    expect(both).toBeLessThan(0.15);
  });

  it('lie within the range that is said nine times in ten', () => {
    const within = forecasts.filter(({ isWithin }) => isWithin).length;
    expect(within / forecasts.length).toBeGreaterThanOrEqual(0.9);
  });
});
