import { describe, expect, it } from '@jest/globals';
import { seededRandom } from '../../shared/schedule/random.js';
import { randomRain, typicalRain, wetShare } from '../../shared/weather/rain-days.js';

const habit = { meanRainMm: 8, wetAfterWetShare: 0.6 };
const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);
const isWet = (values: ArrayLike<number>): boolean[] => Array.from(values, (mm) => 0 < mm);

describe('typicalRain', () => {
  it('brings as much rain and as many wet days as usual', () => {
    for (const mean of [0.5, 2, 3.5]) {
      const days = new Float64Array(1000).fill(mean);
      const rain = typicalRain(days, habit);
      expect(Math.abs(sum(rain) - 1000 * mean)).toBeLessThanOrEqual(4 * habit.meanRainMm);
      const wet = isWet(rain).filter(Boolean).length;
      expect(Math.abs(wet - 1000 * wetShare(mean, habit))).toBeLessThanOrEqual(4);
    }
  });

  it('brings none where there is none', () => {
    expect(sum(typicalRain(new Float64Array(100), habit))).toBe(0);
  });
});

describe('randomRain', () => {
  // The chain of Richardson (1981) has the wet share p as its equilibrium, by its construction:
  // p = p·p_ww + (1 − p)·p_dw. Over 100,000 days the shares are within 1 point of it.
  const days = new Float64Array(100_000).fill(2);
  const rain = randomRain(days, habit, seededRandom(7));
  const wet = isWet(rain);

  it('has the wet share, the mean and the persistence it was asked for', () => {
    expect(Math.abs(wet.filter(Boolean).length / days.length - 0.25)).toBeLessThan(0.01);
    expect(Math.abs(sum(rain) / days.length - 2)).toBeLessThan(0.1);
    const afterWet = wet.filter((_, i) => 0 < i && wet[i - 1]);
    expect(Math.abs(afterWet.filter(Boolean).length / afterWet.length - 0.6)).toBeLessThan(0.01);
  });

  it('is the same again for the same seed', () => {
    expect(randomRain(days.subarray(0, 50), habit, seededRandom(3))).toEqual(
      randomRain(days.subarray(0, 50), habit, seededRandom(3)),
    );
  });
});
