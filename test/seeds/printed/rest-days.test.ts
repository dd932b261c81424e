import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

describe('rest', () => {
  // "Pastures need rest too", NRCS; "When to graze spring pasture", 2010; West Virginia 1992. Retrieved.
  it.each([
    ['mixed', 14, 18, 45, 60],
    ['bluegrass-clover', 14, 18, 45, 60],
    ['tall-fescue', 14, 18, 45, 60],
    ['orchardgrass-legume', 14, 21, 42, 60],
  ])('rests %s %d to %d days in the flush, %d to %d in the heat', (id, ...days) => {
    const { fast, hot } = rowById(tables.forages, id).restDays;
    expect(fast).toBeGreaterThanOrEqual(days[0]!);
    expect(fast).toBeLessThanOrEqual(days[1]!);
    expect(hot).toBeGreaterThanOrEqual(days[2]!);
    expect(hot).toBeLessThanOrEqual(days[3]!);
  });
});
