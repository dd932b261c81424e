import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { CheckRow } from '../../shared/checks/check-row.js';
import { compare, countStandings, isSettled } from '../../shared/checks/compare.js';

const row = (more: Partial<CheckRow> = {}): CheckRow => ({
  id: 'a',
  what: 'Something',
  source: 'ARITHMETIC',
  where: 'page 1',
  mark: 'published',
  theirs: 100,
  unit: 'kg',
  by: 'x',
  allowedShare: 0.1,
  why: 'rounding',
  ...more,
});

describe('compare', () => {
  it('holds up to the edge of what is allowed, and no further', () => {
    expect(compare('t', row(), 110)).toMatchObject({
      standing: 'holds',
      allowed: 10,
      deviation: 10,
    });
    expect(compare('t', row(), 89.9).standing).toBe('beyond');
    expect(compare('t', row(), 110.1).standing).toBe('beyond');
  });

  it('shows what a row explains as disagreeing, and never hides that it is beyond', () => {
    const explained = row({ disagreement: 'Another breed.' });
    expect(compare('t', explained, 150).standing).toBe('disagrees');
    expect(compare('t', explained, 100).standing).toBe('explained-in-vain');
  });

  it('takes no number for beyond, explained or not', () => {
    expect(compare('t', row(), NaN).standing).toBe('beyond');
    expect(compare('t', row({ disagreement: 'Another breed.' }), NaN).standing).toBe('beyond');
  });

  it('allows a share of the size of theirs, below zero as well', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (theirs) => {
        const { standing, allowed } = compare('t', row({ theirs, allowedShare: 0.05 }), theirs);
        expect(standing).toBe('holds');
        expect(allowed).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('counts every row once', () => {
    const standings = ['holds', 'holds', 'disagrees', 'beyond', 'explained-in-vain'] as const;
    const rows = standings.map((standing) => ({ standing }));
    expect(countStandings(rows)).toEqual({ held: 2, beyond: 2, disagreeing: 1 });
    expect(rows.map(isSettled)).toEqual([true, true, true, false, false]);
  });
});
