import { describe, expect, it } from '@jest/globals';
import {
  drawsShareOf,
  fullGrowthKg,
  growDay,
  type GrassDay,
  type GrassState,
} from '../../shared/pasture/sward-day.js';
import { kindOf } from '../../shared/pasture/grass-kind.js';
import { digestibleShare, massOf } from '../../shared/pasture/sward.js';
import { waterAfter, waterShare } from '../../shared/pasture/water-share.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

/*
 * Three days of the four compartments of Jouven, Carrère and Baumont 2006 (Grass and Forage Science
 * 61:112–124), worked out elsewhere by its printed equations and parameters: group B alone, nitrogen
 * index 0.8, 100 mm of water in the soil, before the first cut.
 */
const printed = rowById(tables.forages, 'tall-fescue');
const KIND = {
  ...kindOf(printed, tables.grassGroups),
  // As printed; a plan uses less light, and begins later and warmer.
  ...{ lightUseGPerMJ: 3, onsetSum: 200, baseC: 4 },
};

/** The jumps of the printed figure are not blended. */
const NO_BLEND_MM = 1e-9;
const HELD_MM = 100;

const START: GrassState = {
  ...{ leafKg: 1200, stemKg: 0, deadLeafKg: 300, deadStemKg: 0 },
  ...{ leafAge: 250, stemAge: 0, deadLeafAge: 200, deadStemAge: 0 },
  ...{ isBitten: false, grownKg: 0, lostKg: 0 },
};

interface Expected {
  readonly day: GrassDay;
  readonly grown: number;
  readonly wet: number;
  readonly waterMm: number;
  readonly after: Omit<GrassState, 'isBitten' | 'grownKg' | 'lostKg'>;
  readonly mass: number;
  readonly digestible: number;
}

const EXPECTED: readonly Expected[] = [
  {
    day: dayOf(12.4, 11.0, 9.0, 0, 3.2, 702.4),
    ...{ grown: 152.6773, wet: 1, mass: 1637.0533, digestible: 0.7433 },
    after: {
      ...{ leafKg: 1205.4732, stemKg: 117.444, deadLeafKg: 314.136, deadStemKg: 0 },
      ...{ leafAge: 254.7307, stemAge: 0, deadLeafAge: 200.3268, deadStemAge: 0 },
    },
    waterMm: 67.824,
  },
  {
    day: dayOf(14.0, 11.4, 10.5, 0, 3.9, 716.4),
    ...{ grown: 150.4704, wet: 0.9258, mass: 1769.2956, digestible: 0.7483 },
    after: {
      ...{ leafKg: 1206.4439, stemKg: 231.5463, deadLeafKg: 329.99, deadStemKg: 1.3154 },
      ...{ leafAge: 260.996, stemAge: 7.0016, deadLeafAge: 201.1733, deadStemAge: 0 },
    },
    waterMm: 65.1599,
  },
  {
    day: dayOf(9.0, 11.5, 4.0, 12, 1.6, 725.4),
    ...{ grown: 67.9379, wet: 1, mass: 1825.1545, digestible: 0.7482 },
    after: {
      ...{ leafKg: 1200.4059, stemKg: 281.7223, deadLeafKg: 340.0497, deadStemKg: 2.9766 },
      ...{ leafAge: 266.4697, stemAge: 13.0333, deadLeafAge: 202.1201, deadStemAge: 3.9593 },
    },
    waterMm: 76.0661,
  },
];

function dayOf(
  meanC: number,
  onsetC: number,
  lightMJ: number,
  rainMm: number,
  referenceMm: number,
  temperatureSum: number,
): GrassDay {
  return { meanC, growthC: meanC, onsetC, lightMJ, rainMm, referenceMm, temperatureSum };
}

describe('a sward of four compartments, three days in a row', () => {
  const state = { ...START };
  const ground = { nitrogenIndex: 0.8, waterHeldMm: HELD_MM, growthFactor: 1, coverShare: 1 };
  let waterMm = 70;
  it.each(EXPECTED.map((each, k) => [k + 1, each] as const))('on day %d', (_, expected) => {
    const { day } = expected;
    const drawnMm = day.referenceMm * drawsShareOf(KIND, state);
    waterMm = waterAfter(waterMm, day.rainMm, drawnMm, HELD_MM);
    const wet = waterShare(waterMm / HELD_MM, day.referenceMm, NO_BLEND_MM);
    const { lightMJ, growthC, onsetC, temperatureSum } = day;
    const fullKg = fullGrowthKg(KIND, lightMJ, growthC, onsetC, temperatureSum);
    growDay(state, KIND, ground, day, fullKg * wet);
    expect(waterMm).toBeCloseTo(expected.waterMm, 3);
    expect(wet).toBeCloseTo(expected.wet, 4);
    expect(state.grownKg).toBeCloseTo(expected.grown, 3);
    for (const [name, value] of Object.entries(expected.after))
      expect([name, state[name as keyof GrassState]]).toEqual([name, expect.closeTo(value, 3)]);
    expect(massOf(state)).toBeCloseTo(expected.mass, 3);
    expect(digestibleShare(KIND, state, 0)).toBeCloseTo(expected.digestible, 4);
  });
});
