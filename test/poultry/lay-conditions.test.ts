import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { layByAir, layByLight, lightFelt } from '../../shared/poultry/lay-conditions.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const byLight = layByLight(tables.light);
const byAir = layByAir(tables.laying);
const hours = fc.double({ min: 0, max: 24, noNaN: true });

describe('layByLight', () => {
  it('takes nothing from a long day that does not fall', () => {
    expect(byLight({ hours: 16, hoursBefore: 16 }, 1, true)).toBe(1);
    expect(byLight({ hours: 15, hoursBefore: 14 }, 1, true)).toBe(1);
  });

  it('takes from a falling day of the first cycle, and not after it, when that brings the molt', () => {
    const falling = { hours: 12, hoursBefore: 13.5 };
    const still = { hours: 12, hoursBefore: 12 };
    expect(byLight(falling, 1, true)).toBeLessThan(byLight(still, 1, true));
    expect(byLight(falling, 1, false)).toBe(byLight(still, 1, false));
  });

  it('never leaves more than all or less than nothing, and no more on a shorter day', () => {
    fc.assert(
      fc.property(hours, hours, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, felt) => {
        const [short, long] = a < b ? [a, b] : [b, a];
        const of = (h: number) => byLight({ hours: h, hoursBefore: h }, felt, true);
        expect(of(short)).toBeLessThanOrEqual(of(long) + 1e-12);
        expect(of(short)).toBeGreaterThanOrEqual(0);
        expect(of(long)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('lightFelt', () => {
  it('lets hybrids feel a part of the loss in their first cycle, and every hen all of it later', () => {
    const brown = rowById(tables.layCurves, 'brown-egg');
    expect(lightFelt(brown, true)).toBeLessThan(1);
    expect(lightFelt(brown, false)).toBe(1);
    expect(lightFelt(rowById(tables.layCurves, 'dual-purpose'), true)).toBe(1);
  });
});

describe('layByAir', () => {
  it('leaves all between 10 and 27 °C, and less the further from it', () => {
    for (const airC of [10, 18, 27]) expect(byAir(airC)).toBe(1);
    const colder = [10, 5, 0, -8, -15].map(byAir);
    expect(colder).toEqual([...colder].sort((a, b) => b - a));
    const hotter = [27, 30, 33, 38].map(byAir);
    expect(hotter).toEqual([...hotter].sort((a, b) => b - a));
  });
});
