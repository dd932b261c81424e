import { describe, expect, it } from '@jest/globals';
import { doubtOfBirds, doubtOfDay } from '../../shared/farm/told-doubts.js';
import { tables } from '../support/factories.js';

const { alarms } = tables.judgements;
const reader = { units: 'us', today: '2027-05-01' } as const;

describe('what is asked before it is told', () => {
  it('is a day of another year, not one of this season', () => {
    expect(doubtOfDay('2025-03-18', reader, alarms)).toBe(
      'It was on Tue, Mar 18, 2025, 774 days ago: the year is right',
    );
    expect(doubtOfDay('2026-05-12', reader, alarms)).toBeDefined();
    for (const on of ['2027-03-18', '2027-05-01'])
      expect(doubtOfDay(on, reader, alarms)).toBeUndefined();
  });

  it('is a box of ten times the birds, or of hardly any, not one a few short', () => {
    expect(doubtOfBirds(540, 54, alarms)).toBe('540 came where 54 were waited for: that is right');
    expect(doubtOfBirds(5, 54, alarms)).toBeDefined();
    for (const birds of [48, 54, 58]) expect(doubtOfBirds(birds, 54, alarms)).toBeUndefined();
  });
});
