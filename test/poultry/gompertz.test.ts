import { describe, expect, it } from '@jest/globals';
import { fitGompertz, gompertzWeightKg } from '../../shared/poultry/gompertz.js';

describe('gompertzWeightKg', () => {
  it('gives a layer cockerel about 1.28 kg at 84 days with 40 g at hatch (PubMed Central PMC7149552, Table 1)', () => {
    // Printed: A 2.2 kg, B 0.0239 a day. The 1.28 kg follows with a hatch weight of 40 g.
    const layerMale = { asymptoteKg: 2.2, ratePerDay: 0.0239, hatchKg: 0.04 };
    expect(Math.abs(gompertzWeightKg(layerMale, 84) - 1.28)).toBeLessThanOrEqual(0.005);
    expect(gompertzWeightKg(layerMale, 0)).toBeCloseTo(0.04, 9);
  });

  it('passes its inflection at 0.368 of the asymptote (1 ÷ e)', () => {
    const broiler = { asymptoteKg: 5.6, ratePerDay: 0.0267, hatchKg: 0.04 }; // same table
    const inflection = Math.log(Math.log(5.6 / 0.04)) / 0.0267;
    expect(gompertzWeightKg(broiler, inflection) / 5.6).toBeCloseTo(0.368, 3);
  });

  it('leaves a layer cross male at 15 weeks within 8 % of 1710 g (15.9 g a day, organic trial abstract)', () => {
    // 15.9 g × 105 days + 40 g = 1710 g.
    const layerMale = { asymptoteKg: 2.2, ratePerDay: 0.0239, hatchKg: 0.04 };
    const got = gompertzWeightKg(layerMale, 105);
    expect(Math.abs(got / 1.71 - 1)).toBeLessThan(0.08); // other stock, organic feed
  });
});

describe('fitGompertz', () => {
  it('comes within 30 g of all five weights of the 1957 birds (Poultry Science 82, 2003)', () => {
    const points = [
      { ageDays: 21, weightKg: 0.176 },
      { ageDays: 42, weightKg: 0.539 },
      { ageDays: 56, weightKg: 0.809 },
      { ageDays: 70, weightKg: 1.117 },
      { ageDays: 84, weightKg: 1.43 },
    ];
    const curve = fitGompertz(points, 0.04);
    for (const { ageDays, weightKg } of points) {
      expect(Math.abs(gompertzWeightKg(curve, ageDays) - weightKg)).toBeLessThan(0.03);
    }
  });

  it('predicts the 2001 broiler at 70 and 84 days from its first eight weeks within 5 %', () => {
    // Poultry Science 82, 2003, abstract: 743, 2672, 3946, 4808, 5520 g at 21, 42, 56, 70, 84 days.
    const curve = fitGompertz(
      [
        { ageDays: 21, weightKg: 0.743 },
        { ageDays: 42, weightKg: 2.672 },
        { ageDays: 56, weightKg: 3.946 },
      ],
      0.042,
    );
    expect(Math.abs(gompertzWeightKg(curve, 70) / 4.808 - 1)).toBeLessThan(0.05);
    expect(Math.abs(gompertzWeightKg(curve, 84) / 5.52 - 1)).toBeLessThan(0.05);
  });
});
