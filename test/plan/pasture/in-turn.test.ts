import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { contextAt, MORE_PLACES, PLACES, type Place } from '../../support/five-farms.js';
import { newPaddocks } from '../../support/pasture-factories.js';

// Both bounds are our own, no source.
const LEAST_STAYS = 2;
const LEFT_OUT_DAYS = 60;
const FLUSH_STAY_DAYS = 4;

describe('paddocks of a farm that makes no hay', () => {
  const farms = [...PLACES, ...MORE_PLACES].flatMap((place) => [
    { ...{ place, head: 5, count: 8, areaM2: 6070 }, name: `${place.name}, eight large` },
    { ...{ place, head: 6, count: 12, areaM2: 3000 }, name: `${place.name}, twelve small` },
    { ...{ place, head: 8, count: 6, areaM2: 6000 }, name: `${place.name}, many head` },
  ]);

  // One went without a herd for a summer, while others were grazed every third week.
  it.each(farms)('are grazed in turn: $name', ({ place, head, count, areaM2 }) => {
    const { problem, books } = seasonOf(place, head, count, areaM2);
    const { swards, growthEnds } = problem;
    const first = books.stays[0]!.from;
    swards.forEach(({ turnInKgPerHa }, p) => {
      const own = books.stays.filter(({ paddock }) => paddock === p);
      expect(own.length).toBeGreaterThanOrEqual(LEAST_STAYS);
      let readyFrom = Infinity;
      for (let day = first; day < growthEnds; day++) {
        const isIn = own.some(({ from, days }) => from <= day && day < from + days);
        if (isIn || books.massKgPerHa[p]![day]! < turnInKgPerHa) readyFrom = Infinity;
        else readyFrom = Math.min(readyFrom, day);
        if (day - readyFrom < LEFT_OUT_DAYS) continue;
        const entered = books.stays.filter(({ from }) => readyFrom <= from && from < day);
        expect(new Set(entered.map(({ paddock }) => paddock)).size).toBe(entered.length);
      }
    });
  });

  // Nine days in one paddock in May, while the others grew old.
  it.each(PLACES.slice(0, 3))('are gone through quickly in the flush: $name', (place) => {
    const { problem, books } = seasonOf(place, 5, 8, 6070);
    const fastest = Math.max(...problem.usualGrowth[0]!);
    const flush = books.stays.filter(({ from }) => 0.8 * fastest <= problem.usualGrowth[0]![from]!);
    const days = flush.reduce((sum, stay) => sum + stay.days, 0) / flush.length;
    expect(flush.length).toBeGreaterThan(5);
    expect(days).toBeLessThanOrEqual(FLUSH_STAY_DAYS);
    // Slow growth, slow round.
    expect(Math.max(...books.stays.map((stay) => stay.days))).toBeGreaterThan(7);
  });
});

function seasonOf(place: Place, head: number, count: number, areaM2: number) {
  const paddocks = newPaddocks(count, { areaM2, forageId: place.forageId, hasShade: true });
  return chooseMoves(contextAt(place, head, areaM2, { version: 1, makesHay: false }, paddocks));
}
