import { describe, expect, it } from '@jest/globals';
import { tables } from '../../support/factories.js';

describe('paddockAreaM2', () => {
  it.each([
    [1, 80],
    [2, 75],
    [3, 75],
    [4, 70],
    [5, 65],
    [6, 60],
    [7, 60],
  ])('takes for a stay of %d days %d %% as eaten (Table 1.8-9)', (days, percent) => {
    expect(tables.pasture.utilisation.byStayDays[days - 1]).toBe(percent / 100);
  });
});

describe('rectangleFenceM', () => {
  // "Common fencing mistakes", Beef Magazine, 2007, retrieved: 1 J a mile, 3 ft of rod a joule.
  it('needs 6 J and 18 ft of ground rod for 6 miles (Common fencing mistakes, 2007)', () => {
    const joules = 6 * 1.609344 * tables.fence.energizerJPerKm.value;
    expect(Math.abs(joules - 6)).toBeLessThan(0.002); // stored to four digits
    expect(Math.abs((joules * tables.fence.groundRodMPerJ.value) / 0.3048 - 18)).toBeLessThan(0.02);
  });
});
