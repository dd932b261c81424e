import { describe, expect, it } from '@jest/globals';
import { herdDays } from '../../shared/pasture/herd-demand.js';
import { perHectare } from '../../shared/pasture/sizing.js';
import { HA_PER_ACRE, KG_PER_LB } from '../../shared/units/convert.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const KG_HA_PER_LB_ACRE = KG_PER_LB / HA_PER_ACRE;
const M2_PER_ACRE = HA_PER_ACRE * 10_000;

/** Manure of one day of cattle of 1,000 lb on an acre, lb. */
function ofOneDay(classId: string, head: number): { nLb: number; pLb: number } {
  const group = { classId, head, weightKg: lbToKg(1000), gainKgPerDay: 0 };
  const days = herdDays({ id: 'h', name: 'Cattle', groups: [group] }, tables, {
    first: '2027-05-01',
    days: 1,
    from: 0,
    minC: [8],
    maxC: [18],
    hotC: [18],
    energyMcalPerKg: new Float64Array(800).fill(1.3),
  });
  const lbPerAcre = (kg: number): number => perHectare(kg, M2_PER_ACRE) / KG_HA_PER_LB_ACRE;
  return { nLb: lbPerAcre(days.nitrogenKg[0]!), pLb: lbPerAcre(days.phosphorusKg[0]!) };
}

describe('manure of grazing cattle', () => {
  // The passes are worked by hand from the same table.
  it.each([
    [10_000, 3.1, 1.1],
    [30_000, 9.3, 3.3],
  ])(
    'of a day at %d lb an acre leaves %d lb of nitrogen and %d of phosphorus (by hand)',
    (lb, n, p) => {
      const { nLb, pLb } = ofOneDay('cow-calf', lb / 1000);
      expect(nLb).toBeCloseTo(n, 6);
      expect(pLb).toBeCloseTo(p, 6);
    },
  );

  it('of a pass stays far below the yearly limit of the grass; forty passes of a day do not', () => {
    const limit = tables.pasture.nitrogenLimitKgPerHa.value / KG_HA_PER_LB_ACRE;
    const { nLb } = ofOneDay('cow-calf', 10);
    expect(Math.abs(limit - 120)).toBeLessThan(0.1);
    expect(nLb).toBeLessThan(limit / 30);
    expect(40 * nLb).toBeGreaterThan(limit);
  });
});
