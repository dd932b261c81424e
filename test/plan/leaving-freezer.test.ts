import { describe, expect, it } from '@jest/globals';
import type { Freezer } from '../../shared/farm/facility.js';
import type { NamedBatch } from '../../shared/farm/picture.js';
import { newBatch, newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const freezer = (more: Partial<Freezer> = {}): Freezer => ({
  kind: 'freezer',
  id: 'freezer',
  name: 'Chest freezer',
  liters: 400,
  usedL: 0,
  ...more,
});
const batch = (more: Partial<NamedBatch>): NamedBatch => ({
  ...newBatch({ freezerId: 'freezer', wantedBirds: 40 }),
  id: 'other',
  ...more,
});
const SPRING = batch({ id: 'spring', name: 'Spring', arrivalDate: '2027-04-07' });
const SUMMER = batch({ id: 'summer', name: 'Summer', arrivalDate: '2027-05-19' });

const planOf = (own: NamedBatch, others: readonly NamedBatch[], chest = freezer()) =>
  plannedBatch(newRequest({ batch: own, batches: others, facilities: [newBrooder(), chest] }));
const full = (plan: ReturnType<typeof planOf>) =>
  plan.issues.find(({ code }) => code === 'freezer-full')?.text;

describe('the freezer over all batches', () => {
  it('holds either of two batches alone', () => {
    expect(full(planOf(SPRING, []))).toBeUndefined();
    expect(full(planOf(SUMMER, []))).toBeUndefined();
  });

  it('is over with both, and says so in each of them, on the same day', () => {
    const [spring, summer] = [planOf(SPRING, [SUMMER]), planOf(SUMMER, [SPRING])];
    expect(full(spring)).toContain('Spring and Summer are in it together');
    expect(full(summer)).toBe(full(spring));
    expect(summer.leaving!.freezerSteps!.at(-1)).toMatchObject({
      batchName: 'Summer',
      isOver: true,
    });
  });

  it('has room again when the household eats fast enough', () => {
    expect(full(planOf(SUMMER, [SPRING], freezer({ birdsEatenPerWeek: 6 })))).toBeUndefined();
  });

  it('counts other food', () => {
    expect(full(planOf(SPRING, [], freezer({ usedL: 300 })))).toBeDefined();
  });

  it('knows nothing of a batch in another freezer', () => {
    expect(full(planOf(SUMMER, [{ ...SPRING, freezerId: 'elsewhere' }]))).toBeUndefined();
  });
});
