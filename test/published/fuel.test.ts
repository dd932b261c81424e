import { describe, expect, it } from '@jest/globals';
import { J_PER_BTU, L_PER_US_GAL } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

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

  it('makes a gallon worth 27.1 kWh, so propane at 75 % costs 14.4 × its price a million BTU', () => {
    // Connecticut extension, 2013: price × 14.4 at 75 %, × 12.0 at 90 %.
    const btu = (tables.heat.propane.MJPerL * L_PER_US_GAL * 1e6) / J_PER_BTU;
    expect(Math.abs(1e6 / (btu * 0.75) - 14.4)).toBeLessThan(0.05);
    expect(Math.abs(1e6 / (btu * 0.9) - 12.0)).toBeLessThan(0.05);
    expect(Math.abs((tables.heat.propane.MJPerL * L_PER_US_GAL) / 3.6 - 27.1)).toBeLessThan(0.05);
  });
});
