import { describe, expect, it } from '@jest/globals';
import { continuousCapacityW, lampsByRule } from '../../shared/poultry/brooder-heat.js';
import { fToC } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

const { lampRule, circuit } = tables.heat;

describe('lampsByRule', () => {
  // Homesteading magazine: one 250 W lamp for 75 chicks at 50 °F, one chick fewer for each °F below.
  it.each([
    [50, 75, 1],
    [50, 76, 2],
    [40, 65, 1],
    [40, 66, 2],
    [20, 45, 1],
    [20, 90, 2],
    [20, 91, 3],
    [0, 100, 4],
  ])('hangs at %d °F over %d chicks %d lamps', (f, chicks, lamps) => {
    expect(lampsByRule(lampRule, chicks, fToC(f))).toBe(lamps);
    expect(lampRule.lampW).toBe(250);
  });

  it('keeps 75 chicks a lamp above 50 °F, where the rule gives no figure', () => {
    expect(lampsByRule(lampRule, 75, fToC(80))).toBe(1);
    expect(lampsByRule(lampRule, 76, fToC(80))).toBe(2);
  });
});

describe('continuousCapacityW', () => {
  // National Electrical Code 210.19(A)(1), 210.20(A), as quoted (second-hand): 80 % for 3 hours or more.
  it.each([
    [120, 15, 1440, 5],
    [120, 20, 1920, 7],
    [240, 15, 2880, 11],
    [240, 20, 3840, 15],
  ])('lets %d V and %d A carry %d W, %d lamps of 250 W (second-hand)', (volts, amps, w, lamps) => {
    const capacityW = continuousCapacityW(circuit.share, { volts, amps });
    expect(capacityW).toBeCloseTo(w, 9);
    expect(Math.floor(capacityW / 250)).toBe(lamps);
  });
});
