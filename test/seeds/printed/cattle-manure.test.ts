import { describe, expect, it } from '@jest/globals';
import { herdDays } from '../../../shared/pasture/herd-demand.js';
import { perHectare } from '../../../shared/pasture/sizing.js';
import { rowById } from '../../../shared/tables/tables.js';
import { HA_PER_ACRE, KG_PER_LB } from '../../../shared/units/convert.js';
import { lbToKg } from '../../support/conversions.js';
import { tables } from '../../support/factories.js';

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
  // Utah State University Extension, "Manure Management Basics" (from the NRCS Agricultural Waste Management
  // Handbook, 1992), table, retrieved: lb a day for each 1,000 lb of live weight.
  it.each([
    ['dry-cow', 0.31, 0.11],
    ['stocker', 0.31, 0.11],
    ['bull', 0.31, 0.11],
    ['milk-cow', 0.45, 0.07],
  ])('of %s of 1,000 lb is %d lb of nitrogen and %d lb of phosphorus a day (Utah)', (id, n, p) => {
    const { nLb, pLb } = ofOneDay(id, 1);
    expect(nLb).toBeCloseTo(n, 9);
    expect(pLb).toBeCloseTo(p, 9);
  });

  it('is of beef cattle the same for every class but the milk cow', () => {
    const milk = rowById(tables.cattle.classes, 'milk-cow');
    for (const { id, manure } of tables.cattle.classes) {
      if (id === 'milk-cow') continue;
      expect(manure.nKgPerDayPerKgLive).toBeLessThan(milk.manure.nKgPerDayPerKgLive);
      expect(manure.pKgPerDayPerKgLive).toBeGreaterThan(milk.manure.pKgPerDayPerKgLive);
    }
  });
});
