import { describe, expect, it } from '@jest/globals';
import { newRequest } from '../../support/factories.js';
import { plannedBatch } from '../../support/pictures.js';

// Task list compiled from keepers' threads, homestead blogs and extension pages (second-hand; most
// figures are estimates): daily work is given in hours for each day of it, other work in hours in all.

describe('planTasks', () => {
  it('makes a week of brooder care for 100 chicks take 5.95 h (second-hand)', () => {
    const { tasks } = plannedBatch(newRequest({ batch: { orderedBirds: 100 } })).tasks;
    const care = tasks.find((t) => t.id === 'meat.brooder-care-days-1-to-7')!;
    expect(care.hours).toBeCloseTo(5.95, 6); // (0.6 + 0.25) × 7 days
  });
});
