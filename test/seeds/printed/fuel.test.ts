import { describe, expect, it } from '@jest/globals';
import { J_PER_BTU, L_PER_US_GAL } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';

const MJPerL = (btuPerGal: number): number => (btuPerGal * J_PER_BTU) / 1e6 / L_PER_US_GAL;

describe('heat in propane', () => {
  it.each([
    ['MJPerL', 92500, 'Connecticut extension, 2013'],
    ['low', 91333, 'conversion guide, second-hand'],
    ['high', 100000, 'round figure of a poultry engineer'],
  ] as const)('keeps %s at %d BTU a US gallon (%s)', (field, btu, _source) => {
    expect(Math.abs(tables.heat.propane[field] - MJPerL(btu))).toBeLessThan(0.001); // MJ/L, 4 digits
  });

  it('spreads by 9 % between the conventions', () => {
    const { low, high } = tables.heat.propane;
    expect(Math.abs(high / low - 1.09)).toBeLessThan(0.006);
  });
});
