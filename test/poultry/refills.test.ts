import { describe, expect, it } from '@jest/globals';
import { daysHeldSaid, lastsByDayH, roundsToFill } from '../../shared/poultry/refills.js';

describe('how long full drinkers last', () => {
  it('goes by the hours in which birds drink, and by the day where they hold one', () => {
    expect(lastsByDayH(0.5, 15)).toBe(7.5);
    expect(lastsByDayH(1, 15)).toBe(Infinity);
  });

  it('says the least rounds, and days as people say them', () => {
    expect(roundsToFill(Infinity, 10)).toEqual(['morning']);
    expect(roundsToFill(10, 10)).toEqual(['morning', 'evening']);
    expect(roundsToFill(7.5, 10)).toEqual(['morning', 'noon', 'evening']);
    expect([1.1, 1.5, 2, 9].map(daysHeldSaid)).toEqual([
      'a day',
      'a day and a half',
      'two days',
      'more than a week',
    ]);
  });
});
