import { describe, expect, it } from '@jest/globals';
import { daysOfYear } from '../../shared/calendar/plain-date.js';
import { seededRandom } from '../../shared/schedule/random.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { drawnRun, usualRun } from '../../shared/weather/drawn-year.js';
import { newFarm } from '../support/factories.js';
import { RAIN_MM } from '../support/pasture-factories.js';

const farm = newFarm();
const climate = climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6, RAIN_MM);
const habit = { meanRainMm: 8, wetAfterWetShare: 0.5, dayToDay: 0.65 };
const april = daysOfYear('2027-04-01', 30);

describe('drawnRun', () => {
  const random = seededRandom(3);
  const years = Array.from({ length: 2000 }, () => drawnRun(climate, april, habit, random));
  const lows = years.map((year) => year.minC[14]!);
  const mean = (values: readonly number[]): number =>
    values.reduce((a, b) => a + b, 0) / values.length;

  it('keeps the mean, and has a cold night as often as its name says: one in ten', () => {
    const day = april[14]! - 1;
    // Standard error of a mean of 2,000 with a deviation of 6 ÷ 1.28 °C is 0.1 °C, of a share of
    // one in ten 0.7 %; three of each.
    expect(Math.abs(mean(lows) - climate.meanMinC[day]!)).toBeLessThan(0.32);
    const cold = lows.filter((c) => c <= climate.coldMinC[day]!).length / lows.length;
    expect(Math.abs(cold - 0.1)).toBeLessThan(0.021);
  });

  it('makes a day like the one before it', () => {
    const next = years.map((year) => year.minC[15]!);
    const covariance = mean(lows.map((c, i) => (c - mean(lows)) * (next[i]! - mean(next))));
    const spread = (values: readonly number[]): number =>
      Math.sqrt(mean(values.map((c) => (c - mean(values)) ** 2)));
    const likeness = covariance / (spread(lows) * spread(next));
    expect(Math.abs(likeness - 0.65)).toBeLessThan(0.04); // the coefficient it is drawn with
  });

  it('is the same again for the same seed', () => {
    const again = drawnRun(climate, april, habit, seededRandom(3));
    expect(again).toEqual(drawnRun(climate, april, habit, seededRandom(3)));
    expect(again).toEqual(years[0]);
  });
});

describe('usualRun', () => {
  it('has the mean temperature of every day, and no rain where none is known', () => {
    const { meanRainMm: _rain, ...dry } = climate;
    const run = usualRun(dry, april, habit);
    expect(run.minC[0]).toBe(climate.meanMinC[april[0]! - 1]);
    expect([...run.rainMm].every((mm) => mm === 0)).toBe(true);
  });

  it('has its wet days on the same dates whatever day is the first', () => {
    const later = usualRun(climate, april.subarray(9), habit);
    expect([...later.rainMm]).toEqual([...usualRun(climate, april, habit).rainMm.subarray(9)]);
    expect(later.rainMm.some((mm) => 0 < mm)).toBe(true);
  });
});
