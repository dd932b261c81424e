import { describe, expect, it } from '@jest/globals';
import { defaultRow, rowById } from '../../../shared/tables/tables.js';
import { fToC } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';

describe('move-out rules', () => {
  it('let meat birds out from 3 weeks at nights of 45 °F (keepers, second-hand)', () => {
    const rule = defaultRow(rowById(tables.moveOut, 'meat').rules);
    expect(rule.fromDay).toBe(21);
    expect(Math.abs(rule.nightLowC - fToC(45))).toBeLessThan(0.05);
  });

  it('let pullets out from 6 weeks at nights of 50 °F (keepers, second-hand)', () => {
    const rule = defaultRow(rowById(tables.moveOut, 'layers').rules);
    expect(rule.fromDay).toBe(42);
    expect(Math.abs(rule.nightLowC - fToC(50))).toBeLessThan(0.05);
  });
});
