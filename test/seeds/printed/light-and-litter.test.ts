import { describe, expect, it } from '@jest/globals';
import { tables } from '../../support/factories.js';

describe('light for hens', () => {
  it('starts at 16 weeks and adds an hour a week to 14 to 16 hours (extension, second-hand)', () => {
    expect(tables.light.startAgeDays).toBe(16 * 7);
    expect(tables.light.risePerWeekH).toBe(1);
    expect([tables.light.low, tables.light.high]).toEqual([14, 16]);
    expect(tables.light.targetH).toBeGreaterThanOrEqual(14);
    expect(tables.light.targetH).toBeLessThanOrEqual(16);
  });
});

describe('litter', () => {
  it('lies 3 to 4 in deep at the start (cooperative extension), up to 6 in (supplier, second-hand)', () => {
    expect(tables.litter.depthM).toBeGreaterThanOrEqual(0.0762);
    expect(tables.litter.depthM).toBeLessThanOrEqual(0.1016);
    expect(Math.abs(tables.litter.low - 0.0762)).toBeLessThan(0.0005);
    expect(Math.abs(tables.litter.high - 0.1524)).toBeLessThan(0.0005);
  });

  it('beds 2.2 to 2.8 m² from one bale of 8 ft³ loose at 8 to 10 cm (common practice, no source)', () => {
    const { bagLooseM3, depthM } = tables.litter;
    expect(Math.abs(bagLooseM3 - 8 * 0.028316846592)).toBeLessThan(0.001);
    expect(bagLooseM3 / depthM).toBeGreaterThanOrEqual(2.2);
    expect(bagLooseM3 / depthM).toBeLessThanOrEqual(2.8);
  });
});
