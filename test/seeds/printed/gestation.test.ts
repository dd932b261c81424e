import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../../shared/calendar/plain-date.js';
import { calvingDue } from '../../../shared/pasture/gestation.js';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

describe('calvingDue', () => {
  // "Gestation length of the beef cow versus dystocia" (R. Torell); Beef Improvement Federation guidelines.
  // Retrieved. Holstein, Brown Swiss, Guernsey and Ayrshire are from memory.
  it.each([
    ['all', 283, 'Torell; BIF'],
    ['jersey', 279, 'Torell'],
    ['angus', 281, 'Torell'],
    ['shorthorn', 282, 'Torell'],
    ['hereford', 285, 'Torell'],
    ['simmental', 284.3, 'BIF guidelines'],
    ['holstein', 279, 'from memory'],
    ['brown-swiss', 290, 'from memory'],
    ['guernsey', 284, 'from memory'],
    ['ayrshire', 278, 'from memory'],
  ])('takes for %s %d days (%s)', (id, days, source) => {
    const breed = rowById(tables.gestation.breeds, id);
    expect(breed.meanDays).toBe(days);
    expect(breed.mark).toBe(source === 'from memory' ? 'from-memory' : 'published');
    const { due } = calvingDue(tables.gestation, '2027-06-01', id);
    expect(daysBetween('2027-06-01', due)).toBe(Math.round(days));
  });
});
