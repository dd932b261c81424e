import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { leastCost, rationProgram } from '../../shared/ration/least-cost.js';
import type { MixFeed } from '../../shared/ration/mix-feed.js';
import type { NutrientLimit } from '../../shared/ration/nutrient-limits.js';
import { rowById } from '../../shared/tables/tables.js';
import {
  NUTRIENT_KEYS,
  type Composition,
  type Nutrient,
} from '../../shared/tables/ration-tables.js';
import { tables } from '../support/factories.js';
import { solve } from '../support/ration-factories.js';
import { leastByCorners } from '../support/vertices.js';

type Feed = Pick<MixFeed, 'holds' | 'minorPerKg' | 'least' | 'most' | 'what'>;
const NOTHING = Object.fromEntries(NUTRIENT_KEYS.map((key) => [key, 0])) as Composition;
const ROW = { sources: ['ARITHMETIC'], mark: 'computed' } as const;

const feed = (minorPerKg: number, holds: Partial<Composition>, more: Partial<Feed> = {}): Feed => ({
  what: 'grain',
  minorPerKg,
  least: 0,
  most: 1,
  holds: { ...NOTHING, ...holds },
  ...more,
});
const limit = (nutrient: Nutrient, side: 'least' | 'most', value: number): NutrientLimit => ({
  nutrient,
  side,
  value,
  need: value,
  row: ROW,
});

/** Feeds of the tables as the solved rations of the reference have them, at prices a kg. */
function tableFeeds(
  prices: Readonly<Record<string, number>>,
  most: Readonly<Record<string, number>>,
): Feed[] {
  return Object.entries(prices).map(([id, price]) => {
    const { holds, what } = rowById(tables.ingredients, id);
    // They took peas a little richer and methionine a little purer than the table.
    const own: Partial<Composition> =
      id === 'peas'
        ? { methioninePercent: 0.24, methionineCystinePercent: 0.47 }
        : id === 'methionine'
          ? { methioninePercent: 98, methionineCystinePercent: 98 }
          : {};
    const fixed = id === 'premix' ? { least: 0.005, most: 0.005 } : { most: most[id] ?? 1 };
    return feed(100 * price, { ...holds, ...own }, { what, ...fixed });
  });
}
const PRICES = {
  ...{ corn: 0.3, 'wheat-soft': 0.32, 'soybean-meal-48': 0.6, peas: 0.45, 'fish-meal': 1.6 },
  ...{ 'vegetable-oil': 1.2, limestone: 0.15, 'dicalcium-phosphate': 0.9, salt: 0.25 },
  ...{ methionine: 6, premix: 4 },
};
const names = Object.keys(PRICES);

describe('leastCost against rations solved elsewhere', () => {
  it('mixes limestone, corn and soybeans as the textbook does, with its shadow prices', () => {
    const feeds = [
      feed(10, { calciumPercent: 38 }),
      feed(30.5, { calciumPercent: 0.1, proteinPercent: 9, fiberPercent: 2 }),
      feed(90, { calciumPercent: 0.2, proteinPercent: 50, fiberPercent: 8 }),
    ];
    const limits = [
      limit('calciumPercent', 'least', 0.8),
      limit('calciumPercent', 'most', 1.2),
      limit('proteinPercent', 'least', 22),
      limit('fiberPercent', 'most', 5),
    ];
    const found = leastCost(feeds, limits, { by: 'weight', solve })!;
    expect(found.minorPerKg).toBeCloseTo(49.156, 3);
    [0.028171, 0.648572, 0.323257].forEach((share, i) =>
      expect(found.shares[i]).toBeCloseTo(share, 6),
    );
    // Of one percent, where the book has one whole.
    expect(found.worths[0]).toBeCloseTo(0, 9);
    expect(found.worths[1]).toBeCloseTo(-0.1962, 4);
    expect(found.worths[2]).toBeCloseTo(1.4517, 4);
    expect(found.worths[3]).toBeCloseTo(0, 9);
  });

  it('finds the cheaper sacks where a public answer is dearer', () => {
    const found = solve({
      columns: [
        { cost: 21, least: 0, most: 100 },
        { cost: 7, least: 0, most: 100 },
      ],
      rows: [
        { weights: [70, 21], least: 168 },
        { weights: [9, 7], least: 27 },
        { weights: [7, 1], least: 14 },
      ],
    })!;
    expect(found.cost).toBeCloseTo(51.279, 3);
    expect(found.cost).toBeLessThan(52);
    expect(found.amounts[0]).toBeCloseTo(2.0233, 4);
    expect(found.amounts[1]).toBeCloseTo(1.2558, 4);
  });

  const LAYER = [
    limit('energyKcalPerKg', 'least', 2800),
    limit('proteinPercent', 'least', 16),
    limit('lysinePercent', 'least', 0.75),
    limit('methioninePercent', 'least', 0.33),
    limit('methionineCystinePercent', 'least', 0.63),
    limit('calciumPercent', 'least', 3.6),
    limit('calciumPercent', 'most', 3.9),
    limit('phosphorusPercent', 'least', 0.28),
    limit('fiberPercent', 'most', 7),
    limit('sodiumPercent', 'least', 0.16),
    limit('sodiumPercent', 'most', 0.22),
  ];
  const LAYER_MOST = { peas: 0.2, 'fish-meal': 0.05, 'wheat-soft': 0.5, 'vegetable-oil': 0.04 };

  it('mixes for layers what was solved elsewhere (composition from memory)', () => {
    const found = leastCost(tableFeeds(PRICES, LAYER_MOST), LAYER, { by: 'weight', solve })!;
    expect(found.minorPerKg / 100).toBeCloseTo(0.37886, 4);
    const share = (id: string): number => 100 * found.shares[names.indexOf(id)]!;
    expect(share('corn')).toBeCloseTo(68.244, 2);
    expect(share('soybean-meal-48')).toBeCloseTo(20.915, 2);
    expect(share('limestone')).toBeCloseTo(8.938, 2);
    expect(share('peas')).toBeCloseTo(0, 6);
    const falls = (id: string): number => found.fallsBy[names.indexOf(id)]! / 100;
    expect(falls('peas')).toBeCloseTo(0.0587, 3);
    expect(falls('wheat-soft')).toBeCloseTo(0.0039, 3);
    expect(falls('fish-meal')).toBeCloseTo(0.765, 2);
    expect(found.worths[1]! / 100).toBeCloseTo(0.00643, 4);
  });

  it('takes peas in just below the price at which it says they come in', () => {
    const at = (peas: number) =>
      leastCost(tableFeeds({ ...PRICES, peas }, LAYER_MOST), LAYER, { by: 'weight', solve })!;
    expect(at(0.392).shares[names.indexOf('peas')]).toBeCloseTo(0, 6);
    expect(100 * at(0.39).shares[names.indexOf('peas')]!).toBeCloseTo(1.7, 1);
  });

  it('mixes a broiler starter as solved elsewhere (composition from memory)', () => {
    const limits = [
      limit('energyKcalPerKg', 'least', 2950),
      limit('proteinPercent', 'least', 21.5),
      limit('lysinePercent', 'least', 1.1),
      limit('methioninePercent', 'least', 0.5),
      limit('methionineCystinePercent', 'least', 0.9),
      limit('calciumPercent', 'least', 0.95),
      limit('calciumPercent', 'most', 1.05),
      limit('phosphorusPercent', 'least', 0.45),
      limit('fiberPercent', 'most', 5),
      limit('sodiumPercent', 'least', 0.2),
      limit('sodiumPercent', 'most', 0.25),
    ];
    const most = { peas: 0.1, 'fish-meal': 0.05, 'wheat-soft': 0.3, 'vegetable-oil': 0.05 };
    const found = leastCost(tableFeeds(PRICES, most), limits, { by: 'weight', solve })!;
    expect(found.minorPerKg / 100).toBeCloseTo(0.44446, 3);
    expect(100 * found.shares[0]!).toBeCloseTo(62.06, 1);
  });

  it('lets the sulfur amino acids hold a mix without bagged methionine', () => {
    const limits = [
      limit('energyKcalPerKg', 'least', 2750),
      limit('proteinPercent', 'least', 18),
      limit('lysinePercent', 'least', 0.85),
      limit('methionineCystinePercent', 'least', 0.62),
      limit('calciumPercent', 'least', 0.9),
      limit('calciumPercent', 'most', 1.1),
      limit('phosphorusPercent', 'least', 0.4),
      limit('sodiumPercent', 'least', 0.15),
      limit('sodiumPercent', 'most', 0.25),
    ];
    const { corn: _c, methionine: _m, 'vegetable-oil': _o, ...prices } = PRICES;
    const feeds = tableFeeds(prices, { peas: 0.25, 'fish-meal': 0.05 });
    const found = leastCost(feeds, limits, { by: 'weight', solve })!;
    expect(found.minorPerKg / 100).toBeCloseTo(0.41609, 3);
    expect(100 * found.shares[0]!).toBeCloseTo(70.025, 2);
    const protein = feeds.reduce((sum, f, i) => sum + f.holds.proteinPercent * found.shares[i]!, 0);
    expect(protein).toBeCloseTo(20.6, 1);
    expect(found.worths[3]).toBeGreaterThan(0);
  });
});

describe('leastCost against every corner tried', () => {
  const figure = (min: number, max: number) =>
    fc.integer({ min: 10 * min, max: 10 * max }).map((tenths) => tenths / 10);
  const anyFeed = fc.record({
    minorPerKg: figure(5, 200),
    most: fc.constantFrom(0.3, 0.6, 1, 1),
    holds: fc.record({
      energyKcalPerKg: figure(500, 4000),
      proteinPercent: figure(0, 60),
      calciumPercent: figure(0, 10),
    }),
  });
  const anyMix = fc.record({
    feeds: fc.array(anyFeed, { minLength: 2, maxLength: 4 }),
    protein: figure(5, 18),
    calcium: figure(0.5, 3),
    atKcalPerKg: figure(2500, 3200),
  });

  it('costs the same, by weight and by growth', () => {
    let mixed = 0;
    fc.assert(
      fc.property(anyMix, ({ feeds: drawn, protein, calcium, atKcalPerKg }) => {
        const feeds = drawn.map(({ minorPerKg, most, holds }) => feed(minorPerKg, holds, { most }));
        const limits: NutrientLimit[] = [
          { ...limit('proteinPercent', 'least', protein), atKcalPerKg },
          { ...limit('calciumPercent', 'least', calcium), atKcalPerKg },
          limit('calciumPercent', 'most', 3 * calcium),
        ];
        for (const by of ['weight', 'growth'] as const) {
          const corner = leastByCorners(rationProgram(feeds, limits, by));
          const found = leastCost(feeds, limits, { by, solve });
          if (corner === undefined) {
            expect(found).toBeUndefined();
            continue;
          }
          mixed++;
          const energy = feeds.reduce(
            (sum, { holds }, i) => sum + (holds.energyKcalPerKg * found!.shares[i]!) / 1000,
            0,
          );
          const cost = by === 'weight' ? found!.minorPerKg : found!.minorPerKg / energy;
          expect(cost / corner).toBeCloseTo(1, 5);
        }
      }),
      { numRuns: 150, seed: 20270401 },
    );
    expect(mixed).toBeGreaterThan(50);
  });
});
