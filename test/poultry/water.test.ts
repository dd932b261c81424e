import { describe, expect, it } from '@jest/globals';
import { waterHeatFactor } from '../../shared/poultry/water.js';
import { tables } from '../support/factories.js';

describe('waterHeatFactor', () => {
  const heat = tables.water.heat;

  it('leaves water alone up to 21 °C (second-hand)', () => {
    expect(waterHeatFactor(heat, 21)).toBe(1);
    expect(waterHeatFactor(heat, -10)).toBe(1);
  });
});
