import { describe, expect, it } from '@jest/globals';
import { birdSensibleHeatW } from '../../shared/poultry/brooder-heat.js';
import { tables } from '../support/factories.js';

// Source of the equations: CIGR, 4th Report of the Working Group on Climatization of Animal Houses,
// 2002. FROM MEMORY: only its front matter was seen. The rows are worked from those equations by
// hand; they catch a slip of the code, not one of the memory.
const birds = tables.heat.birds;

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
});
