import { describe, expect, it } from '@jest/globals';
import { tables } from '../../support/factories.js';

describe('temperatureHumidityIndex', () => {
  it('calls 72 moderate and 80 severe (What is the THI and how can you use it)', () => {
    expect(tables.cattleHeat.moderateFrom).toBe(72);
    expect(tables.cattleHeat.severeFrom).toBe(80);
  });
});
