import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { weightBounds } from '../../shared/plan/weight-bounds.js';
import { newBatch, newRequest } from '../support/factories.js';

describe('weights that are believed of a batch', () => {
  const { tables } = newRequest();
  const batch = newBatch({ arrivalDate: '2027-05-03' });
  const on = (days: number) => weightBounds(batch, addDays(batch.arrivalDate, days), tables);

  it('are none of a grown bird for a chick, nor of a chick for a grown bird', () => {
    // 40 g is a usual chick, 3 lb none.
    expect(on(0).min).toBeLessThan(0.04);
    expect(on(0).max).toBeGreaterThan(0.04);
    expect(on(0).max).toBeLessThan(1.36);
    expect(on(56).min).toBeGreaterThan(0.1);
  });

  it('leave room for slow and fast flocks', () => {
    // Meat birds of eight weeks, slow and fast: 1 to 5 kg.
    expect(on(56).min).toBeLessThan(1);
    expect(on(56).max).toBeGreaterThan(5);
  });
});
