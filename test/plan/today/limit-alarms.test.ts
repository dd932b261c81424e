import { describe, expect, it } from '@jest/globals';
import type { FarmPicture, NamedBatch } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { yearCounts } from '../../../shared/plan/record/year-counts.js';
import { plannedOverLimit, toldLimitAlarms } from '../../../shared/plan/today/limit-alarms.js';
import type { Looked } from '../../../shared/plan/today/looked-at.js';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const { batch: ordered, farm, climate, facilities } = newRequest({});
const batch: NamedBatch = { ...ordered, id: 'meat', arrivalDate: '2027-05-05', orderedBirds: 80 };
const judged = tables.judgements.alarms;
const eggs = (n: number): ToldFact =>
  ({
    ...{ id: 'f', key: 'f', kind: 'eggs-gone', about: 'b', on: '2027-03-01' },
    ...{ details: { eggs: n, how: 'sold' }, toldAt: '2027-03-01T10:00:00Z' },
  }) as ToldFact;

describe('a limit of the year', () => {
  const sold = (n: number, eggsSold?: number) =>
    toldLimitAlarms(
      yearCounts(2027, [eggs(n)], 'USD'),
      { ...farm, ...(eggsSold === undefined ? {} : { yearLimits: { eggsSold } }) },
      judged,
    );

  it('is silent where none was typed, or while it is far', () => {
    expect(sold(5000)).toEqual([]);
    expect(sold(899, 1000)).toEqual([]);
  });

  it('says once that it is near and once that it is passed, by whole eggs', () => {
    const [near, full, over] = [900, 1000, 1001].map((n) => sold(n, 1000)[0]!);
    expect(near).toMatchObject({ level: 'act', words: 'eggs sold: 900 of 1,000' });
    expect(full!.key).toBe(near!.key);
    expect(over).toMatchObject({ level: 'stop', words: 'eggs sold: 1,001 of 1,000' });
    expect(over!.key).not.toBe(near!.key);
  });
});

describe('plans of a year against its limit', () => {
  const planned = (birdsProcessed: number, more: Partial<FarmPicture> = {}) => {
    const picture = newPicture({
      ...{ farm: { ...farm, yearLimits: { birdsProcessed } }, climate, facilities },
      ...{ today: '2027-05-12', batches: [batch], ...more },
    });
    const { batches } = planAnimals(picture, tables);
    return {
      birds: batches[0]?.plan.leaving?.birdsToProcess ?? 0,
      alarms: plannedOverLimit({ picture, batches, judged } as unknown as Looked),
    };
  };

  it('count what was processed with what is still to be, each bird once', () => {
    const { birds } = planned(1000);
    expect(planned(birds).alarms).toEqual([]);
    expect(planned(birds - 1).alarms).toHaveLength(1);
    const headChanges = [
      { id: 'c', batchId: 'other', date: '2027-04-01', change: 'processed' as const, birds: 500 },
    ];
    expect(planned(birds + 500, { headChanges }).alarms).toEqual([]);
    expect(planned(birds + 499, { headChanges }).alarms[0]!.words).toContain(
      `${birds + 500} birds`,
    );
    // Over by what was told: that is said as that.
    expect(planned(499, { headChanges }).alarms).toEqual([]);
  });

  it('are said again when a batch is made larger, not when birds of it die', () => {
    const keyOf = (more?: Partial<FarmPicture>) => planned(20, more).alarms[0]!.key;
    const died = [
      { id: 'c', batchId: 'meat', date: '2027-05-10', change: 'died' as const, birds: 3 },
    ];
    expect(keyOf({ headChanges: died })).toBe(keyOf());
    expect(keyOf({ batches: [{ ...batch, orderedBirds: 320 }] })).not.toBe(keyOf());
    const { orderedBirds: _, ...unordered } = batch;
    const wanted = (wantedBirds: number) => keyOf({ batches: [{ ...unordered, wantedBirds }] });
    expect(wanted(400)).not.toBe(wanted(100));
  });

  it('leave out birds of another year, and those that are gone', () => {
    const late: NamedBatch = { ...batch, arrivalDate: '2027-12-01' };
    expect(planned(1, { today: '2027-12-05', batches: [late] }).alarms).toEqual([]);
    const all = {
      id: 'c',
      batchId: 'meat',
      date: '2027-05-10',
      change: 'gone' as const,
      birds: 80,
    };
    expect(planned(1, { headChanges: [all] }).alarms).toEqual([]);
  });
});
