import { describe, expect, it } from '@jest/globals';
import { chillingLimitH } from '../../shared/poultry/processing.js';
import { lbToKg } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const { processing } = tables;

describe('chillingLimitH', () => {
  // To 40 °F within 4 hours up to 4 lb, 6 hours up to 8 lb, 8 hours above (Colorado rule 8 CCR 1202-16;
  // the former federal weight schedule).
  it.each([
    [2, 4],
    [3.9, 4],
    [4.1, 6],
    [7.9, 6],
    [8.1, 8],
    [20, 8],
  ])('gives a carcass of %d lb %d hours', (lb, hours) => {
    expect(chillingLimitH(processing.chilling.rows, lbToKg(lb))).toBe(hours);
  });
});
