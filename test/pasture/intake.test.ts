import { describe, expect, it } from '@jest/globals';
import {
  beefCowIntakeKg,
  dairyIntakeKg,
  fatCorrectedMilkKg,
  growingIntakeKg,
  intakeKg,
} from '../../shared/pasture/intake.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const classOf = (id: string) => rowById(tables.cattle.classes, id);

// The equations and their coefficients are from memory; the results are worked from them by hand.
describe('intake equations (from memory)', () => {
  it.each([
    [250, 1.35, false, 6.1, 0.05],
    [350, 1.35, true, 9.4, 0.05],
  ])(
    'feed growing cattle of %d kg shrunk at %d Mcal/kg, yearling %s, %d kg (NRC 1996, from memory)',
    (shrunkKg, energyMcalPerKg, isYearling, kg, off) => {
      const eaten = growingIntakeKg({ shrunkKg, energyMcalPerKg, isYearling });
      expect(Math.abs(eaten - kg)).toBeLessThanOrEqual(off); // as many decimals as were written down
    },
  );

  it.each([
    [545, 1.2, 8, false, 11.97],
    [545, 1.1, 0, true, 10.95],
  ])(
    'feed a beef cow of %d kg shrunk at %d Mcal/kg and %d kg of milk, late in calf %s, %d kg (NRC 1996, from memory)',
    (shrunkKg, energyMcalPerKg, milkKg, isLatePregnant, kg) => {
      const eaten = beefCowIntakeKg({ shrunkKg, energyMcalPerKg, milkKg, isLatePregnant });
      expect(Math.abs(eaten - kg)).toBeLessThanOrEqual(0.005);
    },
  );

  it.each([
    [650, 30, 3.7, 14, 22.34],
    [450, 15, 5.0, 12, 15.09],
    [450, 15, 5.0, 2, 10.53],
  ])(
    'feed a milk cow of %d kg at %d kg of milk with %d %% fat in week %d %d kg (NRC 2001, from memory)',
    (weightKg, milkKg, fatPercent, weekOfLactation, kg) => {
      const eaten = dairyIntakeKg({ weightKg, milkKg, fatPercent, weekOfLactation });
      expect(Math.abs(eaten - kg)).toBeLessThanOrEqual(0.005);
    },
  );

  it('leave milk of 4 % fat as it is (definition, from memory)', () => {
    expect(fatCorrectedMilkKg(20, 4)).toBeCloseTo(20, 9);
    expect(fatCorrectedMilkKg(20, 5)).toBeCloseTo(23, 9);
  });

  it('take shrunk weight as 0.96 of full weight (NRC 1996, from memory)', () => {
    const day = { milkKg: 8, energyMcalPerKg: 1.2, weekOfLactation: 12 };
    const eaten = intakeKg(classOf('cow-calf'), { ...day, weightKg: 545 / 0.96 });
    expect(Math.abs(eaten - 11.97)).toBeLessThanOrEqual(0.005);
  });
});

describe('intake as a share of body weight', () => {
  it.each(tables.cattle.classes.map((each) => [each.id, each] as const))(
    'and the equation of the class agree within the range of the share: %s (equations from memory)',
    (_, of) => {
      const kg = intakeKg(of, {
        weightKg: of.weightKg,
        milkKg: of.milkKgPerDay,
        energyMcalPerKg: 1.35,
        weekOfLactation: 12,
      });
      const { low, high } = of.bodyWeightShare;
      // A fresh look at the same animal from two sides; 1 % for the rounding of the table.
      expect(kg / of.weightKg).toBeGreaterThan(low * 0.99);
      expect(kg / of.weightKg).toBeLessThan(high * 1.01);
    },
  );
});
