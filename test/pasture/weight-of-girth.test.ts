import { describe, expect, it } from '@jest/globals';
import { weightOfGirth } from '../../shared/pasture/weight-of-girth.js';
import { CM_PER_IN } from '../../shared/units/convert.js';
import { kgToLb } from '../support/conversions.js';
import { tables } from '../support/factories.js';

describe('weightOfGirth', () => {
  // Draft animal handbook, "Determining weights of animals", retrieved: a bull of 60 inches around and 53
  // inches long weighs 636 pounds.
  it('gives the bull of the handbook 636 lb', () => {
    const bull = { girthCm: 60 * CM_PER_IN, lengthCm: 53 * CM_PER_IN };
    expect(kgToLb(weightOfGirth(bull, tables.cattle.girth).value)).toBeCloseTo(636, 1);
  });

  it('says how much lighter heifers were on a scale, never below nothing', () => {
    const { spread, value } = weightOfGirth({ girthCm: 180, lengthCm: 150 }, tables.cattle.girth);
    expect(spread!.high).toBe(value);
    expect(value - spread!.low).toBeCloseTo(80.41, 3);
    const calf = weightOfGirth({ girthCm: 70, lengthCm: 60 }, tables.cattle.girth);
    expect(calf.spread!.low).toBe(0);
  });
});
