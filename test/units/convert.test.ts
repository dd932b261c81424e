import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import * as convert from '../../shared/units/convert.js';
import { inToMm, M3_H_PER_CFM, W_PER_BTU_H } from '../support/conversions.js';

const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('conversions', () => {
  it('turn degrees Fahrenheit there and back', () => {
    fc.assert(
      fc.property(number, (x) => {
        expect(Math.abs(convert.cToF(convert.fToC(x)) - x)).toBeLessThan(1e-8);
        expect(Math.abs(convert.fToC(convert.cToF(x)) - x)).toBeLessThan(1e-8);
      }),
    );
  });

  // NIST Special Publication 811 (2008), appendix B, as printed there.
  it.each([
    ['W for 1 BTU/h', W_PER_BTU_H, 0.2930711],
    ['m²·K/W for 1 ft²·h·°F/BTU', convert.R_SI_PER_R_IP, 0.1761102],
    ['m³/h for 1 cfm', M3_H_PER_CFM, 4.719474e-4 * 3600],
    ['J for 1 BTU', convert.J_PER_BTU, 1055.056],
    ['ha for 1 acre', convert.HA_PER_ACRE, 0.4046873],
    ['mm for 1 in', inToMm(1), 25.4],
  ])('give %s as printed', (_name, got, printed) => {
    expect(Math.abs(got / printed - 1)).toBeLessThan(1e-5); // seven digits; the acre is the survey acre there
  });
});
