import { describe, expect, it } from '@jest/globals';
import { massPerCm } from '../../shared/pasture/forage-mass.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';
import { newPaddock } from '../support/pasture-factories.js';

describe('dry matter in a height of sward', () => {
  it('is what the household cut and weighed where it did', () => {
    const forage = rowById(tables.forages, 'mixed');
    expect(massPerCm(newPaddock({ massKgPerHaCm: 90 }), forage)).toBe(90);
    expect(massPerCm(newPaddock({ stand: 'fair' }), forage)).toBe(forage.massKgPerHaCm.fair.value);
  });
});
