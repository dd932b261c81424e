import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { birdGrowth } from '../../shared/poultry/growth.js';
import { raisedBird, type RaisedBird, type Raising } from '../../shared/poultry/raised-bird.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const LAST = 84;
const bred = fc.constantFrom(...tables.growthTables.map(({ id }) => id));
const grown = (id: string) => birdGrowth(rowById(tables.growthTables, id), 'male');
const plain: Raising = { weightFactor: 1, feedFactor: 1, speed: 1 };
const sumTo = (feed: Float64Array, age: number): number =>
  feed.slice(0, age).reduce((a, b) => a + b, 0);
/** Feed per gain up to the first age at which a bird weighs so much. */
const feedPerGain = ({ weightKg, feedKg }: RaisedBird, kg: number): number => {
  const age = weightKg.findIndex((w) => kg <= w);
  return sumTo(feedKg, age) / (weightKg[age]! - weightKg[0]!);
};

describe('raisedBird', () => {
  it('is the table’s own where nothing sets it apart', () => {
    fc.assert(
      fc.property(bred, (id) => {
        const growth = grown(id);
        const bird = raisedBird(growth, plain, LAST);
        const differs = Array.from({ length: LAST + 1 }, (_, age) => age).filter(
          (age) =>
            !(Math.abs(bird.weightKg[age]! - growth.weightKg[age]!) < 5e-13) ||
            !(Math.abs(sumTo(bird.feedKg, age) - growth.cumulativeFeedKg[age]!) < 5e-10),
        );
        expect(differs).toEqual([]);
      }),
    );
  });

  it('is as heavy at an age as the table’s at so much of it', () => {
    const growth = birdGrowth(tables.growthTables[0]!, 'male');
    const slow = raisedBird(growth, { ...plain, speed: 0.5 }, LAST);
    expect(slow.weightKg[80]).toBeCloseTo(growth.weightKg[40]!, 9);
  });

  it('never converts feed better than the table’s birds to the same weight', () => {
    fc.assert(
      fc.property(bred, fc.double({ min: 0.65, max: 1.45, noNaN: true }), (id, speed) => {
        const growth = grown(id);
        const kg = growth.weightKg[56]!;
        const own = raisedBird(growth, { ...plain, speed }, 200);
        const book = raisedBird(growth, plain, 200);
        // A bird is weighed once a day: a day's step either way.
        expect(feedPerGain(own, kg)).toBeGreaterThan(0.96 * feedPerGain(book, kg));
      }),
    );
  });

  it('loses gain and keeps its thirst in heat', () => {
    const growth = birdGrowth(tables.growthTables[0]!, 'male');
    const hot = raisedBird(growth, { ...plain, airAt: () => ({ gain: 0.8, feed: 0.9 }) }, LAST);
    const cool = raisedBird(growth, plain, LAST);
    expect(hot.weightKg[50]! - hot.weightKg[0]!).toBeCloseTo(
      0.8 * (cool.weightKg[50]! - cool.weightKg[0]!),
      9,
    );
    expect(hot.feedKg[50]).toBeCloseTo(0.9 * cool.feedKg[50]!, 9);
    expect(hot.coolFeedKg[50]).toBeCloseTo(cool.feedKg[50]!, 9);
  });
});
