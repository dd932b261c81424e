import { describe, expect, it } from '@jest/globals';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { BatchChoice } from '../../../shared/farm/batch-choice.js';
import type { Product } from '../../../shared/farm/product.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { newBatch, newBrooder, newRequest } from '../../support/factories.js';
import { comparedBatch, plannedBatch, type BatchCase } from '../../support/pictures.js';

const feed = (phase: string): Product => ({
  id: phase,
  kind: 'feed',
  name: phase,
  phaseIds: [phase],
  bagKg: 20,
  price: '20.00',
});
const PRODUCTS: readonly Product[] = [
  ...['starter', 'grower', 'finisher'].map(feed),
  { id: 'c', kind: 'chicks', name: 'Chicks', price: '3.00' },
  { id: 'b', kind: 'bedding', name: 'Shavings', price: '8.00' },
  { id: 'i', kind: 'ice', name: 'Ice', price: '3.50' },
  { id: 'z', kind: 'freezer-bags', name: 'Bags', price: '0.60' },
];

const given = (batch: Partial<Batch> = {}, more: Partial<BatchCase> = {}) =>
  newRequest({
    facilities: [newBrooder()],
    products: PRODUCTS,
    batch: newBatch({ brooderId: 'brooder', wantedBirds: 60, ...batch }),
    ...more,
  });
const columnsOf = (choices: readonly BatchChoice[], ...asked: Parameters<typeof given>) =>
  comparedBatch(given(...asked), choices).columns;

describe('choices side by side', () => {
  it('begin with the batch as it is planned', () => {
    const [asIs, same] = columnsOf([{}]);
    const { bill, leaving } = plannedBatch(given());
    expect(asIs!.costs!.value).toBe(bill.total.value);
    expect(asIs!.yields!.value).toBe(leaving!.dressedAll.value);
    expect(asIs!.each!.value).toBeCloseTo(bill.perKgDressed!.value, 2);
    expect(same!.said).toEqual(['much the same']);
  });

  it.each<[string, BatchChoice, Partial<Batch>]>([
    ['the number of birds', { wantedBirds: 30 }, { wantedBirds: 30 }],
    ['the breed', { strainId: 'slow-meat' }, { strainId: 'slow-meat' }],
    ['the arrival', { arrivalDate: '2027-07-07' }, { arrivalDate: '2027-07-07' }],
    ['the age', { leaveAgeDays: 70 }, { leaveAgeDays: 70 }],
  ])('plan %s as a batch of its own would be planned', (_, choice, batch) => {
    const [, column] = columnsOf([choice]);
    const plan = plannedBatch(given(batch));
    expect(column!.costs!.value).toBe(plan.bill.total.value);
    expect(column!.yields!.value).toBe(plan.leaving!.dressedAll.value);
    expect(column!.hours!.value).toBe(plan.tasks.hoursInAll.value);
    expect(column!.feed!.value).toBe(plan.feed.total.value);
    // It opens to how many live, as in the plan itself.
    expect(column!.birds).toEqual(plan.birds.atEnd);
    expect(column!.birds!.value).toBe(plan.leaving!.birdsToProcess);
  });

  it('order anew what was ordered for another number, and leave the age of another breed', () => {
    const ordered = { orderedBirds: 66, leaveAgeDays: 50, weightFactor: 0.9 };
    const [, fewer] = columnsOf([{ wantedBirds: 20 }], ordered);
    expect(fewer!.birds!.value).toBeLessThan(30);
    const [, slow] = columnsOf([{ strainId: 'slow-meat' }], ordered);
    const own = plannedBatch(given({ strainId: 'slow-meat', orderedBirds: 66 }));
    expect(slow!.yields!.value).toBe(own.leaving!.dressedAll.value);
  });

  it('add two half batches up: as many birds, more work, less in the freezer at once', () => {
    const [asIs, two] = columnsOf([{ twoWeeksApart: 5 }]);
    expect(Math.abs(two!.birds!.value - asIs!.birds!.value)).toBeLessThan(4);
    expect(two!.hours!.value).toBeGreaterThan(asIs!.hours!.value * 1.2);
    expect(two!.freezer!.value).toBeLessThan(asIs!.freezer!.value * 0.6);
    expect(two!.each!.value).toBeCloseTo(two!.costs!.value / two!.yields!.value, 2);
    expect(two!.label).toBe('Two batches, 5 weeks apart');
  });

  it('price all feed as the household’s own mix, in bags as large as those bought', () => {
    const [asIs, mixed] = columnsOf([{ ownMixPerBag: '10.00' }]);
    const bags = plannedBatch(given()).feed.phases.reduce((sum, p) => sum + p.bags.value, 0);
    expect(asIs!.costs!.value - mixed!.costs!.value).toBe(bags * 1000);
    expect(mixed!.label).toBe('Your own mix at $10.00 a bag');
  });

  it('say the difference in words, the cost first', () => {
    const [, many] = columnsOf([{ wantedBirds: 240 }]);
    expect(many!.said[0]).toMatch(/^\$\d+\.\d\d a kg cheaper, dressed$/);
    expect(many!.said[1]).toMatch(/more meat$/);
    expect(many!.doesNotFit).toContain('brooder too small');
  });

  it('say no cost where something has no price, and name it', () => {
    const products = PRODUCTS.filter(({ kind }) => kind !== 'chicks');
    const [asIs, other] = columnsOf([{ wantedBirds: 30 }], {}, { products });
    expect(asIs!.each).toBeUndefined();
    expect(other!.leftOut).toEqual(['without chicks: no price given']);
    expect(other!.said.join()).not.toMatch(/in all|dearer|cheaper/);
  });

  it('say of a choice that cannot be planned why not, and plan the others', () => {
    const [, far, near] = columnsOf([{ arrivalDate: '2040-01-01' }, { wantedBirds: 30 }]);
    expect(far!.notPlanned).toMatch(/\w+/);
    expect(near!.costs).toBeDefined();
  });

  it('leave out what was told of the batch, and say so', () => {
    const headChanges = [
      { date: '2027-05-10', change: 'died' as const, birds: 20, batchId: 'new' },
    ];
    const asked = given({ orderedBirds: 66 }, { today: '2027-05-12', headChanges });
    const told = comparedBatch(asked, []);
    expect(told.isWithoutTold).toBe(true);
    const untold = comparedBatch(given({ orderedBirds: 66 }, { today: '2027-05-12' }), []);
    expect(told.columns[0]!.birds!.value).toBe(untold.columns[0]!.birds!.value);
    expect(plannedBatch(asked).leaving!.birdsToProcess).toBeLessThan(told.columns[0]!.birds!.value);
  });

  it('open every number with a formula that is listed', () => {
    const layers = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    for (const batch of [{}, layers])
      for (const { formula, label } of quantitiesIn(columnsOf([{ wantedBirds: 30 }], batch)))
        expect([label, FORMULAS.has(formula)]).toEqual([label, true]);
  });
});
