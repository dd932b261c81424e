import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { byBreed } from '../../../shared/plan/record/by-breed.js';
import type { HowItWent } from '../../../shared/plan/record/how-it-went.js';

let k = 0;
/** A batch that is over, with lines of those figures. */
const batch = (
  arrivedOn: string,
  figures: Readonly<Record<string, number>>,
  more: Partial<HowItWent> = {},
): HowItWent => ({
  ...{ batchId: `b${++k}`, name: `B${k}`, strain: 'Cornish Cross', purpose: 'meat' as const },
  ...{ arrivedOn, upTo: `${arrivedOn.slice(0, 4)}-12-01`, isOver: true },
  lines: Object.entries(figures).map(([id, actual]) => ({
    ...{ id, label: id, unit: 'count' as const, actual },
    ...(id === 'hours' ? { planned: 2 * actual } : {}),
  })),
  ...more,
});

/** 50 birds of 2.5 kg and 3 lost on 250 kg of feed; 100 of 2 kg and 12 lost on 600 kg. */
const SMALL = batch('2026-05-01', {
  ...{ came: 53, lost: 3, processed: 50, 'live-each': 2.5, age: 50, feed: 250, conversion: 2 },
  ...{ cost: 50_000, 'cost-live': 400, hours: 4 },
});
const LARGE = batch('2027-05-01', {
  ...{ came: 112, lost: 12, processed: 100, 'live-each': 2, age: 56, feed: 600, conversion: 3 },
  ...{ cost: 100_000, 'cost-live': 500, hours: 6 },
});

describe('batches of a breed together', () => {
  it('are a sum a year and one of all years, each bird and pound as heavy as another', () => {
    const [first, second, all] = byBreed([LARGE, SMALL]);
    expect(first).toMatchObject({ year: 2026, batches: 1, came: { value: 53, of: 1 } });
    expect(second).toMatchObject({ year: 2027, conversion: { value: 3, of: 1 } });
    expect(all).not.toHaveProperty('year');
    expect(all).toMatchObject({
      batches: 2,
      came: { value: 165, of: 2 },
      lost: { value: 15, of: 2 },
      age: { value: (50 * 50 + 56 * 100) / 150, of: 2 },
      hours: { value: 10, of: 2 },
      reckonedHours: { value: 20, of: 2 },
    });
    expect(all!.lostShare!.value).toBeCloseTo(15 / 165, 12);
    expect(all!.liveEach!.value).toBeCloseTo((50 * 2.5 + 100 * 2) / 150, 12);
    // 850 kg of feed for 125 and 200 kg of birds, which cost 150,000 together.
    expect(all!.conversion!.value).toBeCloseTo(850 / 325, 12);
    expect(all!.costLive!.value).toBeCloseTo(150_000 / 325, 12);
  });

  it('are of those alone of which a figure is known, and say of how many', () => {
    const unweighed = batch('2027-08-01', { came: 40, lost: 2, processed: 38 });
    const sums = byBreed([LARGE, unweighed]);
    expect(sums).toHaveLength(1);
    expect(sums[0]).toMatchObject({
      ...{ batches: 2, came: { value: 152, of: 2 }, conversion: { value: 3, of: 1 } },
      liveEach: { value: 2, of: 1 },
    });
  });

  it('leaves out what is not over, and keeps breeds and purposes apart', () => {
    const sums = byBreed([
      SMALL,
      batch('2026-06-01', { came: 9 }, { isOver: false }),
      batch('2026-06-01', { came: 8 }, { strain: 'Barred Rock' }),
      batch('2026-06-01', { came: 7 }, { strain: 'Barred Rock', purpose: 'layers' }),
    ]);
    expect(sums.map(({ strain, purpose, came }) => [strain, purpose, came!.value])).toEqual([
      ['Barred Rock', 'layers', 7],
      ['Barred Rock', 'meat', 8],
      ['Cornish Cross', 'meat', 53],
    ]);
    // One breed kept for both says which; of no other breed it is in question.
    expect(sums.map(({ name }) => name)).toEqual([
      'Barred Rock, for eggs',
      'Barred Rock, for meat',
      'Cornish Cross',
    ]);
    expect(byBreed([])).toEqual([]);
  });

  it('loses no bird between years and the sum of all, whatever is told of which batch', () => {
    const figures = fc.record(
      { came: fc.nat(500), lost: fc.nat(500), processed: fc.nat(500), age: fc.nat(90) },
      { requiredKeys: [] },
    );
    const some = fc.array(fc.tuple(fc.integer({ min: 2020, max: 2029 }), figures));
    fc.assert(
      fc.property(some, (rows) => {
        const went = rows.map(([year, of]) =>
          batch(`${year}-04-01`, Object.fromEntries(Object.entries(of))),
        );
        const sums = byBreed(went);
        for (const figure of ['came', 'lost'] as const) {
          const told = went.flatMap(({ lines }) => lines.filter(({ id }) => id === figure));
          const sum = told.reduce((before, { actual }) => before + actual!, 0);
          const years = sums.filter(({ year }) => year !== undefined);
          const ofYears = years.reduce((before, each) => before + (each[figure]?.value ?? 0), 0);
          expect(ofYears).toBe(sum);
          const all = sums.find(({ year }) => year === undefined);
          if (all && 0 < told.length) expect(all[figure]).toEqual({ value: sum, of: told.length });
        }
      }),
    );
  });
});
