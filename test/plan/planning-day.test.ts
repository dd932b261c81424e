import { describe, expect, it } from '@jest/globals';
import { isHistory, planningDay } from '../../shared/plan/planning-day.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

describe('a batch of long ago', () => {
  it('is planned from the day it came, as it could be planned then', () => {
    const batch = { arrivalDate: '2017-05-05', purpose: 'meat' } as const;
    expect(isHistory(batch, '2027-01-01')).toBe(true);
    const today = planningDay(batch, '2027-01-01');
    expect(today).toBe('2017-05-05');
    expect(plannedBatch(newRequest({ batch, today })).arrivalDate).toBe('2017-05-05');
  });

  it('is one that came more than three years before today', () => {
    const on = (arrivalDate: string, purpose: 'layers' | 'meat') =>
      planningDay({ arrivalDate, purpose }, '2027-01-01');
    expect(on('2024-05-05', 'meat')).toBe('2027-01-01');
    expect(on('2029-05-05', 'meat')).toBe('2027-01-01');
    expect(on('2022-05-05', 'meat')).toBe('2022-05-05');
    // Hens stay for longer.
    expect(on('2022-05-05', 'layers')).toBe('2027-01-01');
    expect(on('2020-05-05', 'layers')).toBe('2020-05-05');
  });
});
