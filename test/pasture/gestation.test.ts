import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import { calvingDue } from '../../shared/pasture/gestation.js';
import { tables } from '../support/factories.js';

describe('calvingDue', () => {
  // "The standard cattle gestation table (283-day label)", web article, weak. It counts the day of service as
  // day 1 and so adds 282 days: each of its dates lies one day before service plus 283.
  it.each([
    ['2027-01-01', '2027-10-10'],
    ['2027-01-25', '2027-11-03'],
    ['2027-02-01', '2027-11-10'],
    ['2027-02-25', '2027-12-04'],
    ['2026-07-01', '2027-04-09'],
    ['2026-07-15', '2027-04-23'],
    ['2026-08-01', '2027-05-10'],
  ])(
    'comes for a service on %s one day after the printed %s, which adds 282',
    (bredOn, printed) => {
      expect(daysBetween(bredOn, printed)).toBe(282);
      const { due } = calvingDue(tables.gestation, bredOn);
      expect(due).toBe(addDays(printed, 1));
      expect(daysBetween(bredOn, due)).toBe(283);
    },
  );

  it('goes through 29 February of a leap year', () => {
    expect(calvingDue(tables.gestation, '2027-07-01').due).toBe('2028-04-09');
  });

  it('spreads by twice 5.52 days for Simmental (BIF guidelines)', () => {
    const { due, early, late } = calvingDue(tables.gestation, '2027-06-01', 'simmental');
    expect([daysBetween(early, due), daysBetween(due, late)]).toEqual([11, 11]);
  });

  it('spreads by twice 5 days otherwise (from memory), within the 12 days within a breed (Torell)', () => {
    const { due, early, late } = calvingDue(tables.gestation, '2027-06-01');
    expect([daysBetween(early, due), daysBetween(due, late)]).toEqual([10, 10]);
    expect(daysBetween(early, due)).toBeLessThanOrEqual(12);
  });

  it.each([
    // Torell, Nevada: Charolais and Limousin 289, Brahman up to 292.
    ['charolais', 289],
    ['limousin', 289],
    ['brahman', 292],
  ])('goes by what is printed of %s: %d days', (breedId, days) => {
    const { due } = calvingDue(tables.gestation, '2027-06-01', breedId);
    expect(daysBetween('2027-06-01', due)).toBe(days);
  });

  it('names a breed it does not know', () => {
    expect(() => calvingDue(tables.gestation, '2027-06-01', 'unicorn')).toThrow('unicorn');
  });
});
