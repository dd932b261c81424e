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

const M2_PER_ACRE = HA_PER_ACRE * 10_000;
const KG_HA_PER_LB_ACRE = KG_PER_LB / HA_PER_ACRE;

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

describe('ground and fence of a paddock', () => {
  // Penn State, table 1.8-9: acres for an animal unit (25 lb a day), with its shares eaten.
  it.each([
    [3, 1000, 0.75, 0.1],
    [5, 750, 0.65, 0.256],
    [7, 1500, 0.6, 0.194],
  ])('is as printed for %d days at %d lb an acre', (days, lbPerAcre, harvestShare, acres) => {
    const areaM2 = paddockAreaM2({
      ...{ demandKgPerDay: lbToKg(25), days, harvestShare },
      availableKgPerHa: lbPerAcre * KG_HA_PER_LB_ACRE,
    });
    expect(Math.abs(areaM2 / M2_PER_ACRE - acres)).toBeLessThan(0.001);
  });

  it.each([
    [2, 0.06],
    [4, 0.25],
  ])('asks of one %d times as long as wide the printed share more than a square', (long, more) => {
    const share = rectangleFenceM(10_000, long) / rectangleFenceM(10_000, 1) - 1;
    expect(Math.abs(share - more)).toBeLessThan(0.005);
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
  it('of a square hectare is 400 m, and 100 m split it in two', () => {
    expect(rectangleFenceM(10_000, 1)).toBeCloseTo(400, 9);
    expect(splitFenceM(10_000, 1, 2)).toBeCloseTo(100, 9);
    expect(splitFenceM(20_000, 2, 4)).toBeCloseTo(300, 9);
  });
});
