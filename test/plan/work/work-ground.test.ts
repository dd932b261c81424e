import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { workFrame, usualDays } from '../../../shared/plan/work/days-of-work.js';
import { suitsNeed } from '../../../shared/plan/work/suits-of-needs.js';
import { fitFromMm } from '../../../shared/plan/work/work-ground.js';
import type { WorkNeed } from '../../../shared/plan/work/work-need.js';
import { tables } from '../../support/factories.js';
import { newWork } from '../../support/season-factories.js';

const today = '2027-04-20';
/** A dry spring that was measured, and dry days that are forecast. */
function dryPlace(more: Parameters<typeof newWork>[0] = {}) {
  const season = newWork({ today, ...more });
  const day = (k: number) => ({ date: addDays(today, k), minC: 5, maxC: 18, rainMm: 0 });
  return {
    ...season,
    climate: {
      ...season.climate,
      recent: Array.from({ length: 30 }, (_, k) => day(k - 30)),
      forecast: Array.from({ length: 10 }, (_, k) => day(k)),
    },
  };
}
const workable = (place: ReturnType<typeof dryPlace>): number[] => [
  ...usualDays(workFrame(place, 10)).isWorkable,
];

describe('looks at the ground', () => {
  it('are believed on their day, and the reckoning goes on from them', () => {
    expect(workable(dryPlace())).toEqual(new Array(10).fill(1));
    const wet = workable(dryPlace({ groundChecks: [{ date: today, isWorkable: false }] }));
    expect(wet[0]).toBe(0);
    expect(wet.at(-1)).toBe(1); // it dries in time
    expect(wet.lastIndexOf(0)).toBeLessThan(4);
  });

  it('of fit ground after rain let work go on', () => {
    const place = dryPlace();
    const recent = place.climate.recent!.map((day, k) => (k === 29 ? { ...day, rainMm: 30 } : day));
    const rained = { ...place, climate: { ...place.climate, recent } };
    expect(workable(rained)[0]).toBe(0);
    const looked = { ...rained, groundChecks: [{ date: today, isWorkable: true }] };
    expect(workable(looked)[0]).toBe(1);
  });

  it('are not needed to see that ground after rain is too wet today, late as work may be', () => {
    const rained = (rainMm: number) => {
      const place = dryPlace();
      const recent = place.climate.recent!.map((day, k) => (k === 29 ? { ...day, rainMm } : day));
      return { ...place, climate: { ...place.climate, recent, forecast: [] } };
    };
    // It was due on an earlier day, and no other day is left for it.
    const late = { conditions: { dryGround: true }, fromDay: 0, untilDay: 0, dueDay: 0 };
    const isOnToday = (rainMm: number) =>
      suitsNeed(late as WorkNeed, usualDays(workFrame(rained(rainMm), 10)), 2)![0];
    expect(isOnToday(0)).toBe(1);
    expect(isOnToday(30)).toBe(0);
  });

  it('mean drier ground for clay than for sand after the same rain', () => {
    const place = (gardenSoilId: string) => {
      const dry = dryPlace({ farm: { gardenSoilId } });
      const recent = dry.climate.recent!.map((day, k) => (k === 20 ? { ...day, rainMm: 60 } : day));
      return usualDays(
        workFrame({ ...dry, climate: { ...dry.climate, recent } }, 10),
      ).isWorkable.reduce((a, b) => a + b, 0);
    };
    expect(place('sand')).toBeGreaterThanOrEqual(place('clay'));
  });
});

describe('fitFromMm', () => {
  it('keeps the usual figure while no look goes against it', () => {
    expect(fitFromMm(5, [], tables.judgements.work)).toBe(5);
    expect(fitFromMm(5, [{ depletionMm: 9, isWorkable: true }], tables.judgements.work)).toBe(5);
    expect(fitFromMm(5, [{ depletionMm: 2, isWorkable: false }], tables.judgements.work)).toBe(5);
  });

  it('goes no further than the looks ask for', () => {
    expect(
      fitFromMm(5, [{ depletionMm: 8, isWorkable: false }], tables.judgements.work),
    ).toBeCloseTo(8.1, 9);
    expect(fitFromMm(5, [{ depletionMm: 3, isWorkable: true }], tables.judgements.work)).toBe(3);
  });

  it('does not believe that ground as dry as dust has to be drier still', () => {
    expect(fitFromMm(5, [{ depletionMm: 30, isWorkable: false }], tables.judgements.work)).toBe(5);
    expect(fitFromMm(5, [{ depletionMm: 0, isWorkable: true }], tables.judgements.work)).toBe(5);
  });

  it('goes with the larger number of looks where they contradict each other', () => {
    const looks = [
      { depletionMm: 8, isWorkable: false },
      { depletionMm: 7, isWorkable: false },
      { depletionMm: 6, isWorkable: true },
    ];
    expect(fitFromMm(5, looks, tables.judgements.work)).toBeCloseTo(8.1, 9);
  });
});
