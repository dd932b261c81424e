import { describe, expect, it } from '@jest/globals';
import { halfMonthsOf, monthsOf, yearSpan } from '../../../shared/plan/year/year-span.js';

describe('the months of a strip', () => {
  it('are thirteen whole ones, this month first', () => {
    const span = yearSpan('2026-11-27');
    // 30 days of November, 365 of the year after it.
    expect(span).toEqual({ from: '2026-11-01', until: '2027-12-01', days: 395 });
    expect(monthsOf(span)).toHaveLength(13);
    expect(monthsOf(span)[2]).toBe('2027-01-01');
  });

  it('hold 29 February', () => {
    expect(yearSpan('2028-01-31').days).toBe(31 + 366);
    expect(yearSpan('2028-12-01').until).toBe('2030-01-01');
  });

  it('come in halves that touch, from the one that is not over', () => {
    const halves = halfMonthsOf(yearSpan('2026-11-16'), '2026-11-16');
    expect(halves[0]).toEqual({ from: '2026-11-16', until: '2026-12-01', days: 15 });
    expect(halves).toHaveLength(25);
    halves.slice(1).forEach(({ from }, k) => expect(from).toBe(halves[k]!.until));
  });
});
