import { describe, expect, it } from '@jest/globals';
import { deadGrassFalls, rainWetness } from '../../shared/pasture/dead-grass.js';
import { tables } from '../support/factories.js';

const { deadGrass } = tables.pasture;
const days = (value: number): Float64Array => new Float64Array(60).fill(value);
const fallsAt = (rainMm: Float64Array | undefined): number =>
  deadGrassFalls(deadGrass, rainWetness(deadGrass, rainMm, days(4)).at(-1)!);

describe('dead grass of the last weeks', () => {
  it('falls as in the wet where no rain is known, for there nothing ever dries', () => {
    expect(fallsAt(undefined)).toBe(fallsAt(days(4)));
  });

  it('falls hardly in a month without rain, whatever fell before it', () => {
    const dry = days(0).fill(9, 0, 60 - deadGrass.overDays);
    expect(fallsAt(dry)).toBe(fallsAt(days(0)));
    expect(fallsAt(dry)).toBeLessThan(0.05 * fallsAt(days(4)));
  });
});
