import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { contextAt, MORE_PLACES, PLACES, type Place } from '../../support/five-farms.js';

/** Hay that a season feeds beyond what is made in it, and what it feeds, kg. */
function hayOf(place: Place, makesHay: boolean, dryMonth?: number) {
  const rainShareByMonth = Array.from({ length: 12 }, (_, m) => (m === dryMonth ? 0.1 : 1));
  const { problem, books } = chooseMoves(
    contextAt(place, 6, 3000, { version: 1, makesHay, rainShareByMonth }),
  );
  let fedKg = 0;
  for (let day = problem.from; day < problem.to; day++) fedKg += books.hayKg[0]![day]!;
  return { fedKg, lackedKg: fedKg - books.cuts.reduce((sum, { kg }) => sum + kg, 0) };
}

/**
 * Months of the warm half-year in which grass grows: at least a tenth as fast as in the best. In a dry
 * summer's months without growth rain only rots what stands, so that hay is spared where it stays away.
 */
function growingMonths(place: Place): number[] {
  const context = contextAt(place, 6, 3000, { version: 1, makesHay: false });
  const { problem } = chooseMoves(context);
  const most = Array<number>(12).fill(0);
  for (let day = problem.from; day < problem.to; day++) {
    const month = Number(context.dateOf(day).slice(5, 7)) - 1;
    most[month] = Math.max(most[month]!, problem.usualGrowth[0]![day]!);
  }
  const warm = place.latitudeDeg < 0 ? [9, 10, 11, 0, 1, 2] : [3, 4, 5, 6, 7, 8];
  return warm.filter((month) => GROWING * Math.max(...most) <= most[month]!);
}
const GROWING = 0.1;

/** Hay that moves by chance where a herd moves a few days sooner, as a share of what is fed. */
const SMALL = 0.03;

describe('a growing month with a tenth of its rain', () => {
  it.each([...PLACES, ...MORE_PLACES])('spares no hay: $name', (place) => {
    const growing = growingMonths(place);
    expect(growing.length).toBeGreaterThan(3);
    const spared: string[] = [];
    for (const makesHay of [true, false]) {
      const usual = hayOf(place, makesHay);
      for (const month of growing) {
        const { lackedKg } = hayOf(place, makesHay, month);
        const kg = usual.lackedKg - lackedKg;
        if (SMALL * usual.fedKg < kg)
          spared.push(`${month + 1}, hay ${makesHay}: ${Math.round(kg)}`);
      }
    }
    expect(spared).toEqual([]);
  });
});
