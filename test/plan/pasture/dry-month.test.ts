import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { contextAt, MORE_PLACES, PLACES, type Place } from '../../support/five-farms.js';

/**
 * Hay that a season feeds beyond what is made in it, and what it feeds, kg.
 *
 * @param needKg what the herd eats by day in the usual year: as soon as a year's growth is over it eats
 *   as of hay, which is another amount
 */
function hayOf(
  place: Place,
  makesHay: boolean,
  { dryMonth, needKg }: { dryMonth?: number; needKg?: Float64Array } = {},
) {
  const rainShareByMonth = Array.from({ length: 12 }, (_, m) => (m === dryMonth ? 0.1 : 1));
  const { problem, books } = chooseMoves(
    contextAt(place, 6, 3000, { version: 1, makesHay, rainShareByMonth }),
  );
  const { demandKg } = problem.herds[0]!;
  let fedKg = 0;
  for (let day = problem.from; day < problem.to; day++)
    fedKg += (books.hayKg[0]![day]! / demandKg[day]!) * (needKg ?? demandKg)[day]!;
  const madeKg = books.cuts.reduce((sum, { kg }) => sum + kg, 0);
  return { fedKg, lackedKg: fedKg - madeKg, needKg: demandKg };
}

/** The warm half-year. */
const warmMonths = ({ latitudeDeg }: Place): number[] =>
  latitudeDeg < 0 ? [9, 10, 11, 0, 1, 2] : [3, 4, 5, 6, 7, 8];

/** Hay that moves by chance where a herd moves a few days sooner, as a share of what is fed. */
const SMALL = 0.03;

describe('a month with a tenth of its rain', () => {
  it.each([...PLACES, ...MORE_PLACES])('spares no hay: $name', (place) => {
    const spared: string[] = [];
    for (const makesHay of [true, false]) {
      const usual = hayOf(place, makesHay);
      for (const month of warmMonths(place)) {
        const { lackedKg } = hayOf(place, makesHay, { dryMonth: month, needKg: usual.needKg });
        const kg = usual.lackedKg - lackedKg;
        if (SMALL * usual.fedKg < kg)
          spared.push(`${month + 1}, hay ${makesHay}: ${Math.round(kg)}`);
      }
    }
    expect(spared).toEqual([]);
  });
});
