import { describe, expect, it } from '@jest/globals';
import { straightLines } from '../../shared/maths/straight-lines.js';

describe('straightLines', () => {
  const read = straightLines([0, 2, 4], [1, 5, 5]);

  it('passes through its points, straight between them', () => {
    expect([0, 1, 2, 3, 4].map(read)).toEqual([1, 3, 5, 5, 5]);
  });

  it('holds its ends', () => {
    expect([read(-7), read(9)]).toEqual([1, 5]);
  });

  it('refuses fewer than two points, or lists of two lengths', () => {
    expect(() => straightLines([1], [1])).toThrow(RangeError);
    expect(() => straightLines([1, 2], [1])).toThrow(RangeError);
  });
});
