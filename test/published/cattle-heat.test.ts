import { describe, expect, it } from '@jest/globals';
import { temperatureHumidityIndex } from '../../shared/pasture/cattle-heat.js';
import { fToC } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

describe('temperatureHumidityIndex', () => {
  // Formula: Veterinary Handbook, section 14.2, retrieved, in °C. Rows: "THI chart notes", a mirror of an
  // Australian dairy text, retrieved; whole numbers.
  it.each([
    [31, 0.4, 78],
    [27, 0.8, 78],
    [25, 0.5, 72],
  ])('is at %d °C and a humidity of %d %d (THI chart notes)', (airC, humidity, printed) => {
    expect(Math.abs(temperatureHumidityIndex(airC, humidity) - printed)).toBeLessThanOrEqual(0.5);
  });

  // "Temperature-Humidity Index explained", web article, 2026: the formula is printed with °F, and its rows run
  // too high. They are not reproduced.
  it.each([
    [85, 0.3, 77, 74.5],
    [85, 0.5, 80, 77.5],
    [85, 0.9, 86, 83.5],
    [90, 0.5, 84, 81.1],
  ])('is at %d °F and %d not the misprinted %d but %d', (airF, humidity, misprinted, right) => {
    const index = temperatureHumidityIndex(fToC(airF), humidity);
    expect(Math.abs(index - right)).toBeLessThanOrEqual(0.05);
    expect(misprinted - index).toBeGreaterThan(2.4);
    expect(misprinted - index).toBeLessThan(3.1);
  });

  it('calls 72 moderate and 80 severe (What is the THI and how can you use it)', () => {
    expect(tables.cattleHeat.moderateFrom).toBe(72);
    expect(tables.cattleHeat.severeFrom).toBe(80);
  });
});
