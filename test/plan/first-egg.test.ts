import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import type { EggCount } from '../../shared/farm/egg-count.js';
import { firstEggAge } from '../../shared/plan/first-egg.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const HATCH = '2027-03-01';
const at = (age: number, eggs: number, days = 1): EggCount => ({
  ...{ id: `c${age}`, batchId: 'any', date: addDays(HATCH, age), days, eggs },
});
const first = (...counts: readonly EggCount[]): number =>
  firstEggAge(140, counts, { hatchDate: HATCH, least: 95, most: 220 });

describe('the age at the first egg', () => {
  it.each([
    ['is the usual one while nothing was counted', [], 140],
    ['is that of an egg that came sooner', [at(128, 1)], 128],
    ['stands when eggs are first counted later, as nobody looked before', [at(160, 9)], 140],
    ['comes after a day on which there was none', [at(150, 0)], 151],
    ['lies between none and some', [at(149, 0), at(155, 2)], 151 - 1],
    ['may be on the first of several days that were counted', [at(134, 5, 7)], 128],
    ['is not moved by a molt', [at(150, 3), at(210, 0)], 140],
    ['is not moved by eggs of a bird of three weeks', [at(21, 4)], 140],
    ['is not moved by hens that were old already', [at(240, 0)], 140],
  ])('%s', (_, counts, age) => {
    expect(first(...counts)).toBe(age);
  });

  it('goes by the counts, in whatever order they were told', () => {
    const count = fc.record({ age: fc.integer({ min: 96, max: 218 }), eggs: fc.nat(3) });
    fc.assert(
      fc.property(fc.array(count, { maxLength: 8 }), (all) => {
        const counts = all.map(({ age, eggs }) => at(age, eggs));
        expect(first(...counts)).toBe(first(...[...counts].reverse()));
        expect(first(...counts)).toBeGreaterThanOrEqual(95);
        expect(first(...counts)).toBeLessThanOrEqual(220);
      }),
    );
  });
});

describe('a plan of hens that lay sooner or later than expected', () => {
  const hens = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
  const planned = (eggCounts: readonly EggCount[] = []) =>
    plannedBatch({ ...newRequest({ batch: { ...hens, wantedBirds: 12 } }), eggCounts });
  const usual = planned();
  const usualDay = String(usual.laying!.firstEgg.value);
  const counted = (days: number, eggs: number) =>
    planned([{ id: 'c', batchId: 'any', date: addDays(usualDay, days), days: 1, eggs }]);
  const moved = (plan: typeof usual) => daysBetween(usualDay, String(plan.laying!.firstEgg.value));
  const feedBag = (plan: typeof usual) =>
    daysBetween(usualDay, String(plan.feed.phases.at(-1)!.starts.value));

  it('moves the first egg, the lay and the layer feed along', () => {
    const [early, late] = [counted(-10, 1), counted(13, 0)];
    expect([moved(early), moved(late)]).toEqual([-10, 14]);
    expect(feedBag(early) - feedBag(usual)).toBe(-10);
    expect(feedBag(late) - feedBag(usual)).toBe(14);
    const eggsOn = (plan: typeof usual, date: string) => {
      const series = plan.daily.find(({ id }) => id === 'lay-age')!;
      return series.values[daysBetween(plan.arrivalDate, date)]!;
    };
    const after = addDays(usualDay, 20);
    expect(eggsOn(early, after)).toBeGreaterThan(eggsOn(usual, after));
    expect(eggsOn(late, after)).toBeLessThan(eggsOn(usual, after));
    expect(early.laying!.ageAtFirstEgg.inputs.map(({ label }) => label)).toContain(
      'Moved by the eggs you counted',
    );
  });
});
