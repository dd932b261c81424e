import { describe, expect, it } from '@jest/globals';
import { saidOnce } from '../../../shared/plan/work/said-once.js';

describe('ways to make room', () => {
  it('are said at the first job that they would make room for', () => {
    const ways = saidOnce([
      { key: 'a', waysToFit: ['a helper', 'an hour more'] },
      { key: 'b', waysToFit: ['a helper'] },
      { key: 'c', waysToFit: ['a later day', 'a helper'] },
    ]);
    expect([...ways]).toEqual([
      ['a', ['a helper', 'an hour more']],
      ['b', []],
      ['c', ['a later day']],
    ]);
  });
});
