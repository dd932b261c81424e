import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import {
  climateFromDaily,
  climateFromMonthlyMeans,
  expectedWeather,
  percentile,
  type DailyWeather,
} from '../../shared/weather/climate.js';

const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Mean of each month of a common year. */
const monthMeans = (year: readonly number[]): number[] => {
  let start = 0;
  return MONTHS.map((days) => {
    const values = year.slice(start, start + days);
    start += days;
    return values.reduce((a, b) => a + b, 0) / days;
  });
};
const history = (
  from: string,
  days: number,
  of: (date: string, index: number) => { minC: number; maxC: number } | undefined,
): DailyWeather[] =>
  Array.from({ length: days }, (_, i) => addDays(from, i)).flatMap((date, i) => {
    const day = of(date, i);
    return day ? [{ date, ...day }] : [];
  });
const CSV = { way: 'csv', label: 'Synthetic' } as const;

describe('climateFromMonthlyMeans', () => {
  const minC = [-11, -10.5, -5.5, 0.8, 6.7, 12, 14.4, 13.6, 9.6, 3.9, -0.8, -7];
  const maxC = [-1.5, -0.3, 4.8, 12.3, 19.3, 23.8, 26.1, 25, 20.9, 13.9, 6.9, 0.9];

  it('keeps the mean of every month within 0.15 °C', () => {
    const climate = climateFromMonthlyMeans(minC, maxC, 6);
    monthMeans(climate.meanMinC).forEach((c, month) =>
      expect(Math.abs(c - minC[month]!)).toBeLessThan(0.15),
    );
    monthMeans(climate.meanMaxC).forEach((c, month) =>
      expect(Math.abs(c - maxC[month]!)).toBeLessThan(0.15),
    );
  });

  it('keeps them for any plausible year, north or south', () => {
    const year = fc.record({
      mean: fc.double({ min: -10, max: 28, noNaN: true }),
      swing: fc.double({ min: -20, max: 20, noNaN: true }),
      phase: fc.double({ min: 0, max: 12, noNaN: true }),
      rough: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
        minLength: 12,
        maxLength: 12,
      }),
    });
    fc.assert(
      fc.property(year, ({ mean, swing, phase, rough }) => {
        const months = rough.map(
          (r, m) => mean + swing * Math.cos((2 * Math.PI * (m - phase)) / 12) + r,
        );
        const climate = climateFromMonthlyMeans(
          months,
          months.map((c) => c + 10),
          6,
        );
        monthMeans(climate.meanMinC).forEach((c, month) =>
          expect(Math.abs(c - months[month]!)).toBeLessThan(0.15),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('has no step at the turn of the year nor anywhere else', () => {
    const { meanMinC } = climateFromMonthlyMeans(minC, maxC, 6);
    expect(meanMinC).toHaveLength(366);
    for (let i = 0; i < 366; i++) {
      expect(Math.abs(meanMinC[(i + 1) % 366]! - meanMinC[i]!)).toBeLessThanOrEqual(0.5);
    }
  });

  it('takes a cold night to be the margin under the mean and a hot day the margin over it', () => {
    const climate = climateFromMonthlyMeans(minC, maxC, 6);
    climate.coldMinC.forEach((c, i) => expect(c).toBeCloseTo(climate.meanMinC[i]! - 6, 6));
    climate.hotMaxC.forEach((c, i) => expect(c).toBeCloseTo(climate.meanMaxC[i]! + 6, 6));
  });

  it('has no spread of its own, and says where it comes from', () => {
    const climate = climateFromMonthlyMeans(minC, maxC, 6);
    expect(climate).toMatchObject({ way: 'monthly-means', years: 0 });
    expect(climate).not.toHaveProperty('sdMinC');
  });
});

describe('climateFromDaily', () => {
  // Eleven years, each 1 °C warmer than the last and the same all year: 10, 11, … 20 °C.
  const elevenYears = history('2001-01-01', 4017, (date) => {
    const minC = 10 + Number(date.slice(0, 4)) - 2001;
    return { minC, maxC: minC + 8 };
  });
  const climate = climateFromDaily(elevenYears, CSV);

  it('counts the years and keeps the label', () => {
    expect(climate).toMatchObject({ way: 'csv', label: 'Synthetic', years: 11 });
  });

  it('finds the mean, the cold tenth and the hot tenth of eleven known years', () => {
    // In July every year has 15 days in the window: mean 15, P10 11, P90 of the highs 27.
    expect(climate.meanMinC[195]).toBeCloseTo(15, 9);
    expect(climate.meanMaxC[195]).toBeCloseTo(23, 9);
    expect(climate.coldMinC[195]).toBeCloseTo(11, 9);
    expect(climate.hotMaxC[195]).toBeCloseTo(27, 9);
  });

  it('gives 29 February an expectation from the days around it', () => {
    expect(climate.meanMinC).toHaveLength(366);
    climate.meanMinC.forEach((c) => expect(Math.abs(c - 15)).toBeLessThan(1));
    expect(climate.meanMinC[365]).toBeGreaterThan(14); // 31 December of leap years, and its neighbors
  });

  it('finds how far single nights lie from the average of their day', () => {
    // Eleven equal years 1 °C apart: √((11² − 1)/12).
    expect(climate.sdMinC![195]).toBeCloseTo(Math.sqrt(10), 2);
  });

  it('does not count the course of the season as spread', () => {
    const rising = history('2001-01-01', 1461, (_date, i) => ({
      minC: 10 * Math.sin((2 * Math.PI * i) / 365.25) + (i % 2 === 0 ? 1 : -1),
      maxC: 25,
    }));
    const { sdMinC } = climateFromDaily(rising, CSV);
    expect(Math.abs(sdMinC![100]! - 1)).toBeLessThan(0.25);
    expect(Math.abs(sdMinC![0]! - 1)).toBeLessThan(0.25);
  });

  it('refuses history in which a season was never measured, and says which', () => {
    const summers = history('2001-01-01', 3652, (date) =>
      '05' <= date.slice(5, 7) && date.slice(5, 7) <= '09' ? { minC: 12, maxC: 24 } : undefined,
    );
    expect(() => climateFromDaily(summers, CSV)).toThrow(
      /no day within a week of 01-01 .* Give whole years/,
    );
  });
});

describe('percentile', () => {
  it('reads between order statistics, (n − 1)q', () => {
    expect(percentile([1, 2, 3, 4, 5], 0.5)).toBe(3);
    expect(percentile([0, 10], 0.1)).toBeCloseTo(1, 12);
    expect(percentile([10, 20, 30], 0.9)).toBeCloseTo(28, 12); // 2 × 0.9 = 1.8: 20 + 0.8 × 10
    expect(percentile([7], 0.9)).toBe(7);
    expect(percentile([1, 2], 0)).toBe(1);
    expect(percentile([1, 2], 1)).toBe(2);
  });

  it('stays within the values and never falls with the share', () => {
    const values = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(
        values,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (list, a, b) => {
          const sorted = [...list].sort((x, y) => x - y);
          const [low, high] = [
            percentile(sorted, Math.min(a, b)),
            percentile(sorted, Math.max(a, b)),
          ];
          expect(low).toBeLessThanOrEqual(high + 1e-9);
          expect(low).toBeGreaterThanOrEqual(sorted[0]! - 1e-9);
          expect(high).toBeLessThanOrEqual(sorted.at(-1)! + 1e-9);
        },
      ),
    );
  });
});

describe('expectedWeather', () => {
  it('lets a forecast day replace what is expected, and only that day', () => {
    const climate = climateFromMonthlyMeans(Array(12).fill(5), Array(12).fill(15), 6);
    const forecastByIndex = new Map([[1, { date: '2027-05-06', minC: -2, maxC: 3 }]]);
    const { minC, maxC, coldMinC, hotMaxC } = expectedWeather(climate, {
      dayOfYear: Int16Array.from([125, 126, 127]),
      forecastByIndex,
    });
    expect([...minC]).toEqual([5, -2, 5]);
    expect([...maxC]).toEqual([15, 3, 15]);
    expect([...coldMinC]).toEqual([-1, -2, -1]);
    expect([...hotMaxC]).toEqual([21, 3, 21]);
  });
});
