import { describe, expect, it } from '@jest/globals';
import { layerEnergyKcal2005, layerEnergyKcalNrc1994 } from '../../shared/poultry/lay.js';

describe('layerEnergyKcalNrc1994', () => {
  it('stays within 10 % of the independent 2005 equation (Acta Sci. Anim. Sci. 27(3), abstract)', () => {
    for (const airC of [12, 18, 24, 30]) {
      const hen = { weightKg: 1.6, gainGPerDay: 1, eggMassGPerDay: 55, airC };
      const ratio = layerEnergyKcal2005(hen) / layerEnergyKcalNrc1994(hen);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.1);
    }
  });
});
