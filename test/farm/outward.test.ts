import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { outward } from '../../shared/farm/outward.js';

describe('bounds rounded outward', () => {
  it('are two figures to the outside', () => {
    expect(outward({ min: 2.1 / 3, max: 2.1 * 3 })).toEqual({ min: 0.7, max: 6.3 });
    expect(outward({ min: 0.03489, max: 12.01 })).toEqual({ min: 0.034, max: 13 });
    expect(outward({ min: 0, max: 1234 })).toEqual({ min: 0, max: 1300 });
  });

  it('hold all that the bounds held, and are near them', () => {
    const kg = fc.double({ min: 0.001, max: 5000, noNaN: true });
    fc.assert(
      fc.property(kg, kg, (min, max) => {
        const said = outward({ min, max });
        expect(said.min).toBeLessThanOrEqual(min * (1 + 1e-9));
        expect(said.max).toBeGreaterThanOrEqual(max * (1 - 1e-9));
        expect(said.max).toBeLessThanOrEqual(max * 1.1 + 1e-9);
        expect(
          String(said.max)
            .replace(/^0\.0*|\./g, '')
            .replace(/0+$/, '').length,
        ).toBeLessThan(3);
      }),
    );
  });
});
