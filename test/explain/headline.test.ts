import { describe, expect, it } from '@jest/globals';
import { formatHeadline } from '../../shared/explain/headline.js';
import type { Unit } from '../../shared/units/unit.js';

const us = { units: 'us', currency: 'USD', today: '2027-04-05' } as const;
const KG_PER_LB = 0.45359237;

describe('a computed number where it is read first', () => {
  it.each<[number, Unit, string]>([
    [5298, 'eggs', '5,300 eggs'],
    [265, 'eggs', '265 eggs'],
    [0.828, 'share', '83 %'],
    [0.025, 'share', '2.5 %'],
    [0.996, 'share', '99.6 %'],
    [5.93 * KG_PER_LB, 'kg', '5.9 lb'],
    [0.25 * KG_PER_LB, 'kg', '0.25 lb'],
    [134 + 46 / 60, 'h', '135 h'],
    [14.5, 'h', '14 h 30 min'],
    [2559.7, 'm', '8,400 ft'],
    [225.2, 'm', '740 ft'],
    [2.44, 'm', '8.01 ft'],
  ])('%d in %s is said as %s', (value, unit, said) => {
    expect(formatHeadline({ value, unit, mark: 'computed' }, us)).toBe(said);
  });

  it('stays as the household told it', () => {
    expect(formatHeadline({ value: 5298, unit: 'eggs', mark: 'own-record' }, us)).toBe(
      '5,298 eggs',
    );
  });
});
