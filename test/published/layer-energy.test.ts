import { describe, expect, it } from '@jest/globals';
import { layerEnergyKcal2005, layerEnergyKcalNrc1994 } from '../../shared/poultry/lay.js';

describe('layerEnergyKcalNrc1994', () => {
  // Source: National Research Council, Nutrient Requirements of Poultry, 1994: metabolisable energy of
  // hens at 22 °C, 60 g eggs, no gain. FROM MEMORY: the printed table was not seen again.
  it.each([
    [1.0, 0, 130],
    [1.5, 0, 177],
    [2.0, 0, 218],
    [2.5, 0, 259],
    [1.5, 0.5, 239],
    [2.0, 0.8, 317],
    [2.0, 0.9, 330],
  ])(
    'gives a hen of %d kg at %d eggs a day about %d kcal (from memory)',
    (weightKg, rate, kcal) => {
      const got = layerEnergyKcalNrc1994({
        weightKg,
        gainGPerDay: 0,
        eggMassGPerDay: 60 * rate,
        airC: 22,
      });
      expect(Math.abs(got - kcal)).toBeLessThanOrEqual(2); // whole kcal, rounded on the way
    },
  );

  it('stays within 10 % of the independent 2005 equation (Acta Sci. Anim. Sci. 27(3), abstract)', () => {
    for (const airC of [12, 18, 24, 30]) {
      const hen = { weightKg: 1.6, gainGPerDay: 1, eggMassGPerDay: 55, airC };
      const ratio = layerEnergyKcal2005(hen) / layerEnergyKcalNrc1994(hen);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.1);
    }
  });
});
