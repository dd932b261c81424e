import { describe, expect, it } from '@jest/globals';
import { henDayShare } from '../../shared/poultry/lay.js';
import { rowById } from '../../shared/tables/tables.js';
import { tables } from '../support/factories.js';

const dual = rowById(tables.layCurves, 'dual-purpose');

describe('henDayShare', () => {
  it('peaks a dual-purpose hen between 60 and 75 % (common practice, no source)', () => {
    const peak = Math.max(...Array.from({ length: 364 }, (_, i) => henDayShare(dual, 22 + i / 7)));
    expect(peak).toBeGreaterThanOrEqual(0.6);
    expect(peak).toBeLessThanOrEqual(0.75);
  });
});
