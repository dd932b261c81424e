import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  fromShown,
  labelAfter,
  SHOWN,
  toShown,
  unitLabel,
  type Unit,
  type UnitSystem,
} from '../../shared/units/unit.js';

const UNITS = Object.keys(SHOWN) as Unit[];
const SYSTEMS: readonly UnitSystem[] = ['metric', 'us'];
const CASES = UNITS.flatMap((unit) => SYSTEMS.map((system) => [unit, system] as const));

describe('toShown and fromShown', () => {
  it.each(CASES)('undo each other for %s in %s units', (unit, system) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const tolerance = 1e-9 * Math.max(1, Math.abs(value));
        expect(
          Math.abs(fromShown(toShown(value, unit, system), unit, system) - value),
        ).toBeLessThan(tolerance);
        expect(
          Math.abs(toShown(fromShown(value, unit, system), unit, system) - value),
        ).toBeLessThan(tolerance);
      }),
      { numRuns: 50 },
    );
  });

  it('leave metric values alone, shares and hectares of square meters aside', () => {
    for (const unit of UNITS.filter((u) => u !== 'share' && u !== 'ha')) {
      expect(toShown(12.5, unit, 'metric')).toBe(12.5);
    }
    expect(toShown(0.125, 'share', 'metric')).toBe(12.5);
    expect(toShown(125_000, 'ha', 'metric')).toBe(12.5);
  });

  // Definitions: NIST Special Publication 811 (2008); the pound, foot and US gallon are exact.
  it.each([
    [0.45359237, 'kg', 1],
    [28.349523125, 'g', 1],
    [0.09290304, 'm2', 1],
    [0.3048, 'm', 1],
    [4046.8564224, 'ha', 1], // an international acre
    [2.54, 'cm', 1],
    [25.4, 'mm', 1],
    [0, 'degC', 32],
    [37.5, 'incubatorC', 99.5],
    [100, 'degC', 212],
    [-40, 'degC', -40],
    [5, 'K', 9],
    [3.785411784, 'L', 1],
    [29.5735295625, 'mL', 1],
    [0.028316846592, 'm3', 1],
    [1.69901079552, 'm3PerH', 1],
    [0.1761101838, 'm2KPerW', 1],
    [5.6782633411, 'WPerM2K', 1],
    [1.8, 'WPerK', 1],
    [4.882427636, 'kgPerM2', 1],
    [1.12085116, 'kgPerHa', 1],
    [16.01846337, 'kgPerL', 1000],
    [0.56066, 'kgPerL', 35.001],
  ] as [number, Unit, number][])('show %d %s as %d in US units', (stored, unit, shown) => {
    expect(Math.abs(toShown(stored, unit, 'us') - shown)).toBeLessThan(2e-5 * Math.max(1, shown));
  });

  it('name every unit that a person must read', () => {
    for (const unit of UNITS) {
      const bare = ['count', 'ratio', 'chance', 'money', 'date', 'text'].includes(unit);
      expect(unitLabel(unit, 'metric') === '').toBe(bare);
      expect(unitLabel(unit, 'us') === '').toBe(bare);
    }
  });
});

describe('labelAfter', () => {
  it('leaves no plural after a one', () => {
    const labels = CASES.map(([unit, system]) => unitLabel(unit, system));
    const plural = labels.filter((label) => /^[a-z]{3,}s$/.test(label));
    expect(new Set(plural)).toEqual(new Set(['days', 'eggs', 'bags', 'bales', 'acres', 'miles']));
    for (const label of plural) expect(labelAfter('1', label)).toBe(label.slice(0, -1));
  });

  it('keeps the plural after every other number, and labels that have none', () => {
    expect(labelAfter('0', 'days')).toBe('days');
    expect(labelAfter('1.5', 'acres')).toBe('acres');
    expect(labelAfter('1', 'kg')).toBe('kg');
    expect(labelAfter('1', '')).toBe('');
  });
});
