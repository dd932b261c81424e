import { describe, expect, it } from '@jest/globals';
import {
  carryingCapacity,
  paddockAreaM2,
  paddocksFor,
  perHectare,
  rectangleFenceM,
  restOfRotation,
  splitFenceM,
} from '../../shared/pasture/sizing.js';
import { HA_PER_ACRE, KG_PER_LB } from '../../shared/units/convert.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const M2_PER_ACRE = HA_PER_ACRE * 10_000;
const KG_HA_PER_LB_ACRE = KG_PER_LB / HA_PER_ACRE;

const acres = (lbPerDay: number, days: number, lbPerAcre: number, harvestShare: number): number =>
  paddockAreaM2({
    demandKgPerDay: lbToKg(lbPerDay),
    days,
    availableKgPerHa: lbPerAcre * KG_HA_PER_LB_ACRE,
    harvestShare,
  }) / M2_PER_ACRE;

describe('paddockAreaM2', () => {
  // Penn State Agronomy Guide, Table 1.8-9, retrieved: 25 lb a unit and day; available forage is already
  // above the stubble. Printed to three decimals.
  it.each([
    [3, 1000, 0.1],
    [5, 750, 0.256],
    [7, 1500, 0.194],
  ])('gives a unit for %d days at %d lb an acre %d acres (Table 1.8-9)', (days, lb, printed) => {
    const share = tables.pasture.utilisation.byStayDays[days - 1]!;
    expect(Math.abs(acres(25, days, lb, share) - printed)).toBeLessThanOrEqual(0.0005);
  });

  it.each([
    [1, 80],
    [2, 75],
    [3, 75],
    [4, 70],
    [5, 65],
    [6, 60],
    [7, 60],
  ])('takes for a stay of %d days %d %% as eaten (Table 1.8-9)', (days, percent) => {
    expect(tables.pasture.utilisation.byStayDays[days - 1]).toBe(percent / 100);
  });

  it("gives 100 cows 2.2 acres a day at 45 cow-days an acre (Grazier's Arithmetic)", () => {
    const cowDays = (8 - 3) * 9; // from 8 in to 3 in, 9 cow-days to an acre-inch of a good stand
    expect(cowDays).toBe(45);
    expect(Math.abs(acres(100, 1, cowDays, 1) - 2.2)).toBeLessThanOrEqual(0.05);
  });

  it.each([
    [30, 3.0],
    [35, 3.5],
  ])(
    'gives 100 milk cows at %d lb each %d acres of 1,000 lb a day (Calculations for good grazing, 2014; areas by hand)',
    (lb, printed) => {
      expect(acres(100 * lb, 1, 1000, 1)).toBeCloseTo(printed, 9);
    },
  );
});

describe('stocking rate and density', () => {
  // "The Grazier: stocking rate and stock density", retrieved: 100 steers of 700 lb on 100 acres.
  const landM2 = 100 * M2_PER_ACRE;

  it('is one steer and 700 lb an acre on all of the land (The Grazier)', () => {
    expect(perHectare(100, landM2) * HA_PER_ACRE).toBeCloseTo(1, 9);
    expect(perHectare(lbToKg(70_000), landM2) / KG_HA_PER_LB_ACRE).toBeCloseTo(700, 6);
  });

  it('is 7,000 lb an acre on one of ten paddocks (The Grazier, inputs; result by hand)', () => {
    expect(perHectare(lbToKg(70_000), landM2 / 10) / KG_HA_PER_LB_ACRE).toBeCloseTo(7000, 6);
  });
});

describe('carryingCapacity', () => {
  it('starts from 800,000 lb on 400 acres of 2,000 lb (Math and the Art of Grazing, first step by hand)', () => {
    const land = { areaM2: 400 * M2_PER_ACRE, growthKgPerHa: 2000 * KG_HA_PER_LB_ACRE };
    const all = carryingCapacity({
      ...land,
      harvestShare: 1,
      intakeKgPerDay: KG_PER_LB,
      seasonDays: 1,
    });
    expect(Math.abs(all / 800_000 - 1)).toBeLessThan(1e-9);
  });

  it('is growth times the share eaten by intake times days (University of Maine, Lesson 5; by hand)', () => {
    // 10 ha × 6,000 kg × 0.7 ÷ (12 kg × 180 days) = 19.44
    const head = carryingCapacity({
      areaM2: 100_000,
      growthKgPerHa: 6000,
      harvestShare: 0.7,
      intakeKgPerDay: 12,
      seasonDays: 180,
    });
    expect(Math.abs(head - 19.44)).toBeLessThan(0.005);
  });
});

describe('paddocks and rest', () => {
  // "Rotational grazing's efficient", Mississippi State: 7 paddocks of 3 to 4 days; rests by hand.
  it.each([
    [7, 3, 18],
    [7, 4, 24],
  ])('rest %d paddocks of %d days %d days each, and back', (paddocks, stay, rest) => {
    expect(restOfRotation(paddocks, stay)).toBe(rest);
    expect(paddocksFor(rest, stay)).toBe(paddocks);
  });

  it('rounds up to whole paddocks (West Virginia 1992; the form of the rule from memory)', () => {
    expect(paddocksFor(42, 3)).toBe(15);
    expect(paddocksFor(43, 3)).toBe(16);
    expect(paddocksFor(21, 1)).toBe(22);
  });
});

describe('rectangleFenceM', () => {
  // D. Scott, "Consideration of paddock shape and access in subdivision fencing", New Zealand Grassland
  // Association, 2001, abstract, retrieved: whole per cents more than a square of the same area.
  it.each([
    [1, 0],
    [2, 6],
    [4, 25],
  ])('of %d to 1 is %d %% longer than of a square (Scott 2001)', (ratio, percent) => {
    const more = 100 * (rectangleFenceM(10_000, ratio) / rectangleFenceM(10_000, 1) - 1);
    expect(Math.abs(more - percent)).toBeLessThanOrEqual(0.5);
  });

  it('of a square hectare is 400 m, and 100 m split it in two', () => {
    expect(rectangleFenceM(10_000, 1)).toBeCloseTo(400, 9);
    expect(splitFenceM(10_000, 1, 2)).toBeCloseTo(100, 9);
    expect(splitFenceM(20_000, 2, 4)).toBeCloseTo(300, 9);
  });

  // "Common fencing mistakes", Beef Magazine, 2007, retrieved: 1 J a mile, 3 ft of rod a joule.
  it('needs 6 J and 18 ft of ground rod for 6 miles (Common fencing mistakes, 2007)', () => {
    const joules = 6 * 1.609344 * tables.fence.energizerJPerKm.value;
    expect(Math.abs(joules - 6)).toBeLessThan(0.002); // stored to four digits
    expect(Math.abs((joules * tables.fence.groundRodMPerJ.value) / 0.3048 - 18)).toBeLessThan(0.02);
  });
});
