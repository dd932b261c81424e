import { describe, expect, it } from '@jest/globals';
import { tables } from '../../support/factories.js';

describe('manure nitrogen', () => {
  // Utah extension, from the federal waste handbook (1992): pounds of nitrogen a day for each 1,000 lb
  // live; pounds over pounds, so kilograms over kilograms.
  it.each([
    ['meat', 1.1],
    ['layers', 0.83],
  ] as const)('is, of %s, %d lb a day for each 1,000 lb live', (purpose, lb) => {
    expect(tables.manure[purpose].nKgPerDayPerKgLive).toBeCloseTo(lb / 1000, 9);
  });
});
