import { describe, expect, it } from '@jest/globals';
import { freshAirM3PerH, ventilationWPerK } from '../../shared/poultry/brooder-heat.js';
import { M3_H_PER_CFM } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const rules = tables.heat.ventilation;

describe('freshAirM3PerH', () => {
  it('gives a broiler of 2 kg 0.908 m³/h (British Poultry Science 22, 1981)', () => {
    // 1.5·10⁻⁴ m³/s for each kg^0.75: 1.5e-4 × 3600 × 2^0.75 = 0.908.
    const air = freshAirM3PerH(rules, { birds: 1, weightKg: 2, unventedGas: false });
    expect(Math.abs(air.mid - 0.908)).toBeLessThanOrEqual(0.0005);
  });

  it('gives 1.00 m³/h for each kg live at the high end of a grown bird (Georgia extension)', () => {
    const air = freshAirM3PerH(rules, { birds: 100, weightKg: 2.5, unventedGas: false });
    expect(air.high).toBeCloseTo(250, 6);
    expect(air.low).toBeCloseTo(100 * 0.54 * 2.5 ** 0.75, 6);
  });

  it('doubles with an unvented gas heater (Georgia extension, 2012)', () => {
    const vented = freshAirM3PerH(rules, { birds: 50, weightKg: 0.2, unventedGas: false });
    const gas = freshAirM3PerH(rules, { birds: 50, weightKg: 0.2, unventedGas: true });
    expect(gas.low / vented.low).toBeCloseTo(2, 9);
    expect(gas.mid / vented.mid).toBeCloseTo(2, 9);
    expect(gas.high / vented.high).toBeCloseTo(2, 9);
  });
});

describe('ventilationWPerK', () => {
  it('carries off 1.08 BTU/h for each cfm and °F at sea level (from memory)', () => {
    const btuH = (ventilationWPerK(M3_H_PER_CFM, 0) * 3.412) / 1.8; // one cfm, one °F
    expect(Math.abs(btuH - 1.08)).toBeLessThan(0.005); // two decimals
  });
});
