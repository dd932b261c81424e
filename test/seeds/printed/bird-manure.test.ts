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

  // Turkeys from the same table; ducks remembered from the handbook.
  it.each([
    ['turkey', 0.74, 0.28],
    ['duck', 0.7, 0.3],
  ])('and phosphorus are, of a %s, %d and %d lb', (species, nLb, pLb) => {
    const row = tables.manure.others.find((each) => each.species === species)!;
    expect(row.nKgPerDayPerKgLive).toBeCloseTo(nLb / 1000, 9);
    expect(row.pKgPerDayPerKgLive).toBeCloseTo(pLb / 1000, 9);
  });
});
