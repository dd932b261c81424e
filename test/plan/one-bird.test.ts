import { describe, expect, it } from '@jest/globals';
import { newRequest } from '../support/factories.js';
import { notFiniteIn } from './not-finite.js';
import { plannedBatch } from '../support/pictures.js';

describe('planBatch', () => {
  it('orders one bird when one is wanted: it lives in 19 of 20 tries', () => {
    const plan = plannedBatch(newRequest({ batch: { wantedBirds: 1 } }));
    expect(plan.birds.toOrder.value).toBe(1);
    expect(plan.birds.enough.value).toBeCloseTo(0.98 * 0.97, 2);
    expect(plan.leaving!.birdsToProcess).toBe(1);
    expect(notFiniteIn(plan)).toEqual([]);
  });

  it('counts one bird placed as one bird to process, though 0.95 are expected', () => {
    const plan = plannedBatch(newRequest({ batch: { wantedBirds: 1, orderedBirds: 1 } }));
    expect(plan.leaving!.birdsToProcess).toBe(1);
    expect(notFiniteIn(plan)).toEqual([]);
  });

  it('plans the largest batch there is', () => {
    const plan = plannedBatch(
      newRequest({ batch: { wantedBirds: 5000, orderedBirds: 6000, brooderId: 'brooder' } }),
    );
    expect(notFiniteIn(plan)).toEqual([]);
    expect(plan.birds.chicksPlaced.value).toBe(6000);
  });
});
