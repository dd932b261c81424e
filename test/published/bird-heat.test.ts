import { describe, expect, it } from '@jest/globals';
import { birdSensibleHeatW } from '../../shared/poultry/brooder-heat.js';
import { tables } from '../support/factories.js';

// Source of the equations: CIGR, 4th Report of the Working Group on Climatization of Animal Houses,
// 2002. FROM MEMORY: only its front matter was seen. The rows are worked from those equations by
// hand; they catch a slip of the code, not one of the memory.
const birds = tables.heat.birds;

/** Total heat of one broiler by the equation, W; the program needs its dry part only. */
const totalW = (weightKg: number, airC: number): number =>
  birds.totalW * weightKg ** birds.exponent * (1 + birds.perK * (20 - airC));

describe('total heat of a bird', () => {
  it.each([
    [0.04, 0.95],
    [0.5, 6.315],
    [1, 10.62],
    [2, 17.86],
    [2.5, 21.11],
  ])('gives a broiler of %d kg at 20 °C %d W (from memory)', (kg, w) => {
    expect(Math.abs(totalW(kg, 20) - w)).toBeLessThanOrEqual(0.005);
  });

  it.each([
    [10, 1200],
    [20, 1000],
    [30, 800],
    [33, 740],
  ])('corrects a heat-producing unit at %d °C to %d W (from memory)', (c, w) => {
    const unit = totalW(1, c) / 10.62;
    expect(unit * 1000).toBeCloseTo(w, 6);
  });

  // An independent trial, male broilers of 0.2 to 3.3 kg: fasting heat below the critical temperature,
  // kg^0.75 × (84.98 + 2.65 (CT − T)) kcal a day (abstract). A fed bird must give more than that.
  it.each([
    [0.5, 25, 3.05],
    [1, 20, 5.48],
    [2.5, 15, 11.09],
    [2.5, 25, 8.53],
  ])(
    'gives a fed bird of %d kg at %d °C more than a fasting one, %d W (trial abstract)',
    (kg, c, w) => {
      const ratio = totalW(kg, c) / w;
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(2.5);
    },
  );
});

describe('birdSensibleHeatW', () => {
  it.each([
    [15, 619.7, 639.7],
    [20, 518.8, 554.4],
    [25, 406.5, 462.1],
    [30, 282.8, 362.8],
  ])(
    'gives a heat-producing unit at %d °C %d W dry, or %d W with the other bracket (from memory)',
    (c, mid, high) => {
      const heat = birdSensibleHeatW(birds, 1, c);
      expect(Math.abs((heat.mid / 10.62) * 1000 - mid)).toBeLessThanOrEqual(0.06); // one decimal
      expect(Math.abs((heat.high / 10.62) * 1000 - high)).toBeLessThanOrEqual(0.06);
    },
  );

  it('takes off 17 % at the low end, as measured on straw litter (J. Agric. Engng Res. 75, 2000)', () => {
    const heat = birdSensibleHeatW(birds, 1.2, 22);
    expect(heat.low / heat.mid).toBeCloseTo(0.83, 9);
  });

  it('stays within the 0 to 11 W/kg that a manual gives for birds of 0.2 kg and more (Kentucky, chapter 8)', () => {
    for (const kg of [0.5, 1, 2, 3]) {
      for (const c of [10, 20, 30, 35]) {
        expect(birdSensibleHeatW(birds, kg, c).mid / kg).toBeGreaterThanOrEqual(0);
        expect(birdSensibleHeatW(birds, kg, c).mid / kg).toBeLessThanOrEqual(11);
      }
    }
  });

  it('is credited only after the first week (brooding trial, 1982, abstract)', () => {
    expect(birds.creditFromDay).toBe(7);
  });
});
