import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

const dressing = (id: string) => rowById(tables.processing.dressing, id);

describe('dressing share', () => {
  // Carcass over live weight as printed. Definitions differ by neck, giblets, feet and water.
  it.each([
    ['fast-meat', 1444.29, 1924.29, 0.7506, 'Korean J. Poult. Sci. 48(4), Table 1'],
    ['fast-meat', 1406.9, 1892.5, 0.743, 'J. Central European Agriculture 9(1), 2008; prints 74.5'],
    ['fast-meat', 1288.2, 1753.3, 0.735, 'J. Central European Agriculture 9(1), 2008; prints 73.3'],
    ['fast-meat', 1500, 2200, 0.68, 'meat federation cuts, implied'],
  ])('of %s holds %d g of %d g, a share of %d (%s)', (id, carcassG, liveG, share) => {
    const { low, high } = dressing(id);
    expect(Math.abs(carcassG / liveG - share)).toBeLessThan(0.003); // 1.5 kg and 2.2 kg are rounded
    expect(carcassG / liveG).toBeGreaterThanOrEqual(low - 0.0005);
    expect(carcassG / liveG).toBeLessThanOrEqual(high);
  });

  it.each([
    ['fast-meat', 0.75, 'fryers, processing text, second-hand'],
    ['fast-meat', 0.76, 'roasters, processing text, second-hand'],
    ['slow-meat', 0.677, 'slow yellow birds of 90 days, PubMed Central PMC9495107'],
    ['slow-meat', 0.721, 'slow yellow birds, PubMed Central PMC8914003'],
    ['heritage', 0.575, 'red dual-purpose breed at 20 weeks, 2012'],
    ['heritage', 0.626, 'its crosses, 2012'],
    ['heritage', 0.7, 'heavy hens, processing text, second-hand'],
  ])('of %s spans %d (%s)', (id, share) => {
    expect(share).toBeGreaterThanOrEqual(dressing(id).low);
    expect(share).toBeLessThanOrEqual(dressing(id).high);
  });

  it('is not the 91.2 % of a bled and plucked bird: every row is eviscerated', () => {
    // PubMed Central PMC9495107: 1771.93 g of 1942.54 g before evisceration.
    expect(Math.abs(1771.93 / 1942.54 - 0.912)).toBeLessThan(0.001);
    for (const row of tables.processing.dressing) {
      expect(row.definition).toContain('eviscerated');
      expect(row.high).toBeLessThan(0.912);
    }
  });
});
