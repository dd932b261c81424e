import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import { shortOn, type HeadChange } from '../../shared/farm/head-count.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const ARRIVAL = '2027-05-05';
const told = (
  day: number,
  change: HeadChange['change'],
  birds: number,
  from = ARRIVAL,
): HeadChange => ({ batchId: 'any', date: addDays(from, day), change, birds });
const planned = (
  headChanges: readonly HeadChange[],
  today: number,
  batch: Partial<Batch> = {},
): BatchPlan => plannedBatch(newRequest({ batch, headChanges, today: addDays(ARRIVAL, today) }));
const alive = (plan: BatchPlan, day: number): number =>
  plan.daily.find(({ id }) => id === 'alive')!.values[day]!;
const codes = ({ issues }: BatchPlan): string[] => issues.map(({ code }) => code);

describe('a plan of birds that were counted', () => {
  it('goes by the day on which the box came, and by the birds in it that were alive', () => {
    const late = planned([told(2, 'arrived', 74)], 3);
    expect(late.arrivalDate).toBe(addDays(ARRIVAL, 2));
    expect(late.birds.chicksPlaced.value).toBe(74);
    expect(alive(late, 0)).toBe(74);
    // Everything that hangs on the arrival has moved with it.
    const planOfBefore = planned([], 3);
    expect(late.leaving!.on.value).toBe(addDays(String(planOfBefore.leaving!.on.value), 2));
  });

  it('asks nobody to order with the chicks in the shed', () => {
    const dead = planned([told(0, 'arrived', 79), told(2, 'died', 6)], 5, { wantedBirds: 75 });
    expect(codes(dead)).toContain('fewer-than-wanted');
    expect(dead.issues.filter(({ text }) => /Order \d/.test(text))).toEqual([]);
    expect(alive(dead, 5)).toBe(73);
    expect(dead.birds.counted!.now.value).toBe(73);
  });

  it('keeps to the count up to today, and to the usual losses from there on', () => {
    const plan = planned([told(0, 'arrived', 80), told(3, 'died', 2)], 10);
    const usual = planned([], 10, { orderedBirds: 80 });
    for (let day = 3; day <= 10; day++) expect(alive(plan, day)).toBe(78);
    for (let day = 11; day < 40; day++) {
      expect(alive(plan, day) / 78).toBeCloseTo(alive(usual, day) / alive(usual, 10), 6);
    }
  });

  it('feeds those there are: birds that went on day 30 eat no more', () => {
    const [before, after] = [
      planned([told(0, 'arrived', 80)], 30),
      planned([told(0, 'arrived', 80), told(30, 'gone', 20)], 30),
    ];
    expect(alive(before, 30)).toBe(80);
    expect(alive(after, 30)).toBe(60);
    expect(after.feed.total.value).toBeLessThan(before.feed.total.value);
    expect(after.birds.atEnd.value).toBeLessThan(before.birds.atEnd.value);
  });

  it('says when losses are above the usual, and not of a chick or two', () => {
    const with_ = (birds: number) =>
      codes(planned([told(0, 'arrived', 80), told(4, 'died', birds)], 5));
    expect(with_(2)).not.toContain('losses-above-usual');
    expect(with_(12)).toContain('losses-above-usual');
  });

  // Bos and others 2007: half of 1 % on each of two days running, of broilers and free layers.
  it('says when some die within two days after the first week, though few flocks lose less in all', () => {
    const with_ = (birds: number, today: number) =>
      codes(planned([told(0, 'arrived', 81), told(20, 'died', birds)], today));
    expect(with_(3, 21)).toContain('losses-above-usual');
    expect(with_(2, 21)).not.toContain('losses-above-usual');
    // Two days later it is no news.
    expect(with_(3, 23)).not.toContain('losses-above-usual');
    const large = (birds: number) =>
      codes(planned([told(0, 'arrived', 900), told(20, 'died', birds)], 21));
    expect(large(8)).not.toContain('losses-above-usual');
    expect(large(10)).toContain('losses-above-usual');
  });

  it('ends on the day on which the last bird went', () => {
    const over = planned(
      [told(0, 'arrived', 50), told(48, 'processed', 20), told(50, 'processed', 30)],
      55,
    );
    expect(over.lastDate).toBe(addDays(ARRIVAL, 50));
    expect(over.leaving!.on.value).toBe(addDays(ARRIVAL, 50));
    expect(over.birds.atEnd.value).toBe(30);
    expect(over.birds.counted!.now.value).toBe(0);
    expect(codes(over)).not.toContain('fewer-than-wanted');
  });

  it('ends when somebody says that those were the last, whoever is missing', () => {
    const last = { ...told(50, 'processed', 70), isLast: true };
    const over = planned([last], 60, { orderedBirds: 79 });
    expect(over.lastDate).toBe(addDays(ARRIVAL, 50));
    expect(over.birds.counted!.now.value).toBe(0);
    expect(over.birds.counted!.died.value).toBe(9);
  });

  it('can be made whatever becomes of the birds', () => {
    const change = fc.record({
      day: fc.nat(60),
      change: fc.constantFrom<HeadChange['change']>('died', 'processed', 'gone'),
      birds: fc.integer({ min: 1, max: 80 }),
    });
    const batch = fc.constantFrom<Partial<Batch>>(
      {},
      { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' },
    );
    fc.assert(
      fc.property(
        batch,
        fc.array(change, { maxLength: 6 }),
        fc.nat(70),
        fc.option(fc.integer({ min: 1, max: 90 })),
        (kind, changes, today, came) => {
          const heads = [
            ...(came === null ? [] : [told(0, 'arrived', came)]),
            ...changes
              .filter(({ day }) => day <= today)
              .map((each) => told(each.day, each.change, each.birds)),
          ];
          if (shortOn(heads, kind.orderedBirds)) return;
          const plan = planned(heads, today, kind);
          expect(plan.daily.filter(({ values }) => values.some(Number.isNaN))).toEqual([]);
          const last = alive(plan, Math.min(today, plan.daily[0]!.values.length - 1));
          expect(last).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 40 },
    );
  });
});
