import { describe, expect, it } from '@jest/globals';
import { publicHolidays } from '../../src/holidays/holidays.js';

const namesOf = (country: string, on: RegExp): string[] =>
  publicHolidays({ country }, '2027-01-01')
    .filter(({ date, name }) => date.startsWith('2027') && on.test(name))
    .map(({ name }) => name);

describe('names of public holidays', () => {
  it('are those of the country', () => {
    expect(namesOf('US', /^Lab/)).toEqual(['Labor Day']);
    expect(namesOf('CA', /^Lab/)).toEqual(['Labour Day']);
    expect(namesOf('US', /^June/)).toEqual(['Juneteenth (observed)', 'Juneteenth']);
    expect(namesOf('GB', /^Boxing/)).toEqual(['Boxing Day', 'Boxing Day (substitute day)']);
  });
});
