import { describe, expect, it } from '@jest/globals';
import { estimateClimate } from '../../shared/weather/climate-estimate.js';
import { loadRegions } from '../../src/climate-estimate/load-regions.js';

const regions = loadRegions();
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b) / values.length;

/**
 * Normals of 1991 to 2020 of NOAA's 5 km grid, at the cell of a station: average low and high of
 * the year, of January, and the rain of a year.
 */
const NORMALS = [
  ['Richmond', 37.5, -77.33, 49, { year: [8.9, 21.1], january: [-2.1, 8.6], rainMm: 1183 }],
  ['Hanover', 43.7, -72.28, 183, { year: [1.1, 13.8], january: [-12.6, -0.9], rainMm: 1011 }],
  ['Chicago', 41.78, -87.75, 186, { year: [5.3, 15.4], january: [-8.1, -0.1], rainMm: 964 }],
  ['Duluth', 46.83, -92.18, 430, { year: [-1.3, 9.7], january: [-16.7, -7.1], rainMm: 778 }],
  ['Valley City', 46.92, -98, 375, { year: [-1.1, 11.2], january: [-18.4, -7.6], rainMm: 550 }],
  ['Raleigh', 35.87, -78.78, 134, { year: [9.4, 21.8], january: [-0.8, 10.8], rainMm: 1213 }],
  ['Athens', 33.95, -83.32, 244, { year: [10.4, 22.6], january: [0.5, 12], rainMm: 1287 }],
  ['Lansing', 42.78, -84.6, 262, { year: [3.6, 14.2], january: [-8.7, -0.9], rainMm: 887 }],
  ['Monroe', 32.52, -92.05, 24, { year: [12.1, 24.7], january: [2.1, 13.9], rainMm: 1444 }],
  ['Paducah', 34.02, -100.3, 570, { year: [9.9, 24.6], january: [-1.4, 13], rainMm: 590 }],
] as const;

/** High basins of the West are the worst of the lower 48 states, which the estimate says. */
const DISAGREES = { latitudeDeg: 43.57, longitudeDeg: -116.22, elevationM: 866, januaryLowC: -4.3 };

/** Nineteen of twenty months of places that were left out lie within these. */
const MOST_OFF = { low: 2.65, high: 2.04 };

describe('the climate estimate against published normals', () => {
  it.each(NORMALS)('is right about %s', (_name, latitudeDeg, longitudeDeg, elevationM, theirs) => {
    const ours = estimateClimate(regions, { latitudeDeg, longitudeDeg, elevationM })!;
    const off = (value: number, published: number): number => Math.abs(value - published);
    expect(off(mean(ours.minC), theirs.year[0])).toBeLessThan(MOST_OFF.low);
    expect(off(mean(ours.maxC), theirs.year[1])).toBeLessThan(MOST_OFF.high);
    expect(off(ours.minC[0]!, theirs.january[0])).toBeLessThan(MOST_OFF.low);
    expect(off(ours.maxC[0]!, theirs.january[1])).toBeLessThan(MOST_OFF.high);
    const rainMm = ours.rainMm.reduce((a, b) => a + b);
    // The error told of the place is a typical one; three in a hundred places lie beyond thrice it.
    const typical = ours.rainErrorPercent / 100;
    expect(off(rainMm / theirs.rainMm, 1)).toBeLessThan(Math.max(0.2, 3 * typical));
  });

  it('disagrees about January nights at Boise: they come out too cold', () => {
    const ours = estimateClimate(regions, DISAGREES)!;
    expect(DISAGREES.januaryLowC - ours.minC[0]!).toBeGreaterThan(MOST_OFF.low);
    expect(DISAGREES.januaryLowC - ours.minC[0]!).toBeLessThan(3.5);
  });
});
