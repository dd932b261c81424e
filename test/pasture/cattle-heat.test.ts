import { describe, expect, it } from '@jest/globals';
import { temperatureHumidityIndex } from '../../shared/pasture/cattle-heat.js';
import { fToC } from '../../shared/units/convert.js';

describe('temperatureHumidityIndex', () => {
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
});
