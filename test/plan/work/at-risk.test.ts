import { describe, expect, it } from '@jest/globals';
import { struckTogether } from '../../../shared/plan/work/at-risk.js';

describe('work that is struck out in one go', () => {
  it('is none of which animals suffer if it is not done: that is asked of each', () => {
    const own = { key: 'fence', ifLate: 'It falls over' };
    const canWait = { key: 'tags', of: 'Cows' };
    const risky = { key: 'brooder', of: 'Chicks', ifLate: 'They chill' };
    expect(struckTogether([own, risky, canWait])).toEqual([own, canWait]);
    expect(struckTogether([risky])).toEqual([]);
  });
});
