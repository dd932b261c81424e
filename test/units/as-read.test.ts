import { describe, expect, it } from '@jest/globals';
import { asRead } from '../../shared/units/as-read.js';
import { fromShown, toShown, type Unit, type UnitSystem } from '../../shared/units/unit.js';

/** The number that stands in the box. */
const shown = (typed: number, unit: Unit, units: UnitSystem): number =>
  Number(toShown(asRead(fromShown(typed, unit, units), unit, units), unit, units).toFixed(6));

describe('a number that is filled in to be told', () => {
  it.each<[number, Unit, UnitSystem, number]>([
    [80.1, 'degC', 'us', 80],
    [26.7, 'degC', 'metric', 27],
    [-3.4, 'degC', 'metric', -3],
    [7.77, 'L', 'us', 8],
    [7.7, 'L', 'us', 7.5],
    [2.1, 'L', 'us', 2],
    [31.4, 'L', 'us', 31],
    [9.3, 'L', 'metric', 9.5],
    [0.48, 'mm', 'us', 0.5],
    [78.6, 'count', 'us', 79],
  ])('of %d %s (%s) is %d', (typed, unit, units, read) => {
    expect(shown(typed, unit, units)).toBe(read);
  });

  it('is never nothing of something, and of nothing nothing', () => {
    expect(shown(0.02, 'L', 'us')).toBe(0.25);
    expect(shown(0.2, 'count', 'us')).toBe(1);
    expect(shown(0, 'L', 'us')).toBe(0);
    // 0.1 mm of rain is none that a gauge shows, and no tenfold of it.
    expect(asRead(0.1, 'mm', 'us')).toBe(0);
    expect(asRead(0.1, 'mm', 'metric')).toBe(0);
  });

  it('leaves what has no step of its own', () => {
    expect(asRead(22.68, 'kg', 'us')).toBe(22.68);
  });
});
