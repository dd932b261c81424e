import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { lifeOf } from '../../shared/plan/life.js';
import { birdGrowth, LAST_AGE_DAYS, sexShares } from '../../shared/poultry/growth.js';
import type { BirdSex } from '../../shared/tables/bird-tables.js';
import { newBatch, tables } from '../support/factories.js';

const CASES = tables.growthTables.flatMap((table) =>
  (['male', 'female'] as const).map((sex) => [table.id, sex, table] as const),
);

/** A table that prints both sexes alike at first lets the curves between cross by some grams. */
const GRAMS_OF_ROUNDING_KG = 0.004;

describe('birdGrowth', () => {
  it('is asked for every table and both sexes', () => {
    expect(CASES).toHaveLength(24); // 12 tables
  });

  it.each(CASES)(
    'gives %s, %s, a weight and feed at every age: finite, never falling',
    (_id, sex, table) => {
      const { weightKg, cumulativeFeedKg } = birdGrowth(table, sex);
      expect(weightKg).toHaveLength(LAST_AGE_DAYS + 1);
      expect(cumulativeFeedKg).toHaveLength(LAST_AGE_DAYS + 1);
      expect(cumulativeFeedKg[0]).toBe(0);
      // The day on which one is none, or falls; no expectation a day, which takes its time.
      const weightFails = weightKg.findIndex(
        (kg, day) => !(Number.isFinite(kg) && 0.03 < kg && (weightKg[day - 1] ?? 0) - 1e-9 <= kg),
      );
      const feedFails = cumulativeFeedKg.findIndex(
        (kg, day) => !(Number.isFinite(kg) && (cumulativeFeedKg[day - 1] ?? 0) <= kg),
      );
      expect({ weightFails, feedFails }).toEqual({ weightFails: -1, feedFails: -1 });
    },
  );

  it.each(CASES)(
    'keeps %s, %s, in one piece where its table ends: no jump of a tenth in a day',
    (_id, sex, table) => {
      const { weightKg, cumulativeFeedKg, lastTableDay, lastFeedDay } = birdGrowth(table, sex);
      const gain = (day: number): number => weightKg[day + 1]! - weightKg[day]!;
      const feed = (day: number): number => cumulativeFeedKg[day + 1]! - cumulativeFeedKg[day]!;
      expect(gain(lastTableDay)).toBeLessThan(0.05 * weightKg[lastTableDay]!);
      if (0 < lastFeedDay) expect(feed(lastFeedDay) / feed(lastFeedDay - 1)).toBeLessThan(1.35);
      if (0 < lastFeedDay) expect(feed(lastFeedDay) / feed(lastFeedDay - 1)).toBeGreaterThan(0.65);
    },
  );

  it('splits an as-hatched line so that the mean is the printed line again', () => {
    for (const table of tables.growthTables.filter((t) => t.asHatched && t.sexRatio)) {
      for (const point of table.asHatched!) {
        const mean =
          (birdGrowth(table, 'male').weightKg[point.ageDays]! +
            birdGrowth(table, 'female').weightKg[point.ageDays]!) /
          2;
        expect(mean).toBeCloseTo(point.weightKg, 9);
      }
    }
  });

  it('makes a cockerel at least as heavy as a pullet of the same meat table', () => {
    for (const table of tables.growthTables.filter((t) => !t.maleGompertz)) {
      for (let day = 0; day <= 112; day++) {
        expect(birdGrowth(table, 'male').weightKg[day]!).toBeGreaterThanOrEqual(
          birdGrowth(table, 'female').weightKg[day]! - GRAMS_OF_ROUNDING_KG,
        );
      }
    }
  });
});

describe('sexShares', () => {
  it('adds up to all birds', () => {
    for (const sex of ['straight-run', 'cockerels', 'pullets'] as const) {
      const shares: Record<BirdSex, number> = sexShares(sex);
      expect(shares.male + shares.female).toBe(1);
    }
  });
});

describe('lifeOf', () => {
  const strains = tables.strains.flatMap((s) =>
    s.purposes.map((purpose) => ({ strainId: s.id, purpose })),
  );

  it('never feeds less when there is one more bird', () => {
    const feedKg = (orderedBirds: number, of: (typeof strains)[number]): number =>
      lifeOf(newBatch({ ...of, orderedBirds, sex: 'straight-run' }), tables).flockFeedKg.reduce(
        (a, b) => a + b,
        0,
      );
    fc.assert(
      fc.property(fc.constantFrom(...strains), fc.integer({ min: 1, max: 5999 }), (of, birds) => {
        expect(feedKg(birds + 1, of)).toBeGreaterThan(feedKg(birds, of));
      }),
      { numRuns: 100 },
    );
  });

  it('never orders fewer birds when one more is wanted', () => {
    fc.assert(
      fc.property(fc.constantFrom(...strains), fc.integer({ min: 1, max: 4999 }), (of, wanted) => {
        const order = (wantedBirds: number): number =>
          lifeOf(newBatch({ ...of, wantedBirds, sex: 'straight-run' }), tables).orderForWanted;
        expect(order(wanted + 1)).toBeGreaterThanOrEqual(order(wanted));
        expect(order(wanted)).toBeGreaterThanOrEqual(wanted);
      }),
      { numRuns: 100 },
    );
  });

  it('leaves at least the birds wanted four times in five', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...strains),
        fc.integer({ min: 1, max: 5000 }),
        (of, wantedBirds) => {
          const life = lifeOf(newBatch({ ...of, wantedBirds, sex: 'straight-run' }), tables);
          expect(life.enough).toBeGreaterThanOrEqual(0.8 - 1e-6);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('takes the feed away on the day of leaving, and only then', () => {
    const life = lifeOf(newBatch(), tables);
    expect(life.flockFeedKg.at(-1)).toBe(0);
    expect(life.flockFeedKg.slice(0, -1).every((kg) => 0 < kg)).toBe(true);
  });

  it('leaves on the first day on which the mean reaches the target', () => {
    const life = lifeOf(newBatch({ targetLiveKg: 2 }), tables);
    expect(life.meanWeightKg.at(-1)!).toBeGreaterThanOrEqual(2);
    expect(life.meanWeightKg.at(-2)!).toBeLessThan(2);
  });
});
