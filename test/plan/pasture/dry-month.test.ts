import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { contextAt, PLACES, type Place } from '../../support/five-farms.js';

const MORE_PLACES: readonly Place[] = [
  {
    ...{ name: 'dry summer, western Oregon', latitudeDeg: 44.57, forageId: 'orchardgrass-legume' },
    minC: [1, 1.6, 3, 4.3, 6.7, 9.2, 11.1, 10.8, 8.9, 5.5, 3.3, 1],
    maxC: [8.2, 10.4, 13.1, 15.7, 19.3, 22.8, 27.4, 27.9, 25, 18.2, 11.4, 7.7],
    rainMm: [153, 128, 117, 71, 62, 35, 12, 17, 36, 77, 164, 187],
  },
  {
    ...{ name: 'Ohio', latitudeDeg: 40.78, forageId: 'orchardgrass-legume' },
    minC: [-7.5, -6.5, -2.2, 3.5, 9.2, 14.3, 16.4, 15.6, 11.7, 5.7, 0.8, -4.2],
    maxC: [1, 2.9, 8.7, 15.8, 21.6, 26.1, 28, 27.2, 23.8, 17.1, 9.9, 3.7],
    rainMm: [69, 58, 77, 90, 105, 106, 106, 96, 84, 73, 77, 73],
  },
  {
    ...{ name: 'Pennsylvania', latitudeDeg: 40.71, forageId: 'orchardgrass-legume' },
    minC: [-7.7, -6.8, -2.8, 2.9, 8.6, 13.7, 16.1, 15.3, 11.4, 5.2, 0.4, -4.4],
    maxC: [0.5, 2.4, 7.6, 14.9, 20.9, 25.3, 27.5, 26.6, 22.7, 16, 9.1, 3],
    rainMm: [68, 60, 82, 84, 92, 103, 97, 96, 95, 87, 78, 79],
  },
];

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

/** Hay that moves by chance where a herd moves a few days sooner, as a share of what is fed. */
const SMALL = 0.03;

describe('a growing month with a tenth of its rain', () => {
  it.each([...PLACES, ...MORE_PLACES])('spares no hay: $name', (place) => {
    const growing = place.latitudeDeg < 0 ? [9, 10, 11, 0, 1, 2] : [3, 4, 5, 6, 7, 8];
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
