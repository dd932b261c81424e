import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bagsFor, costMinor, isPrice } from '../../shared/money/money.js';

describe('costMinor', () => {
  it('rounds once, half up, to the smallest coin', () => {
    expect(costMinor('0.125', 1, 'USD')).toBe(13);
    expect(costMinor('0.124', 1, 'USD')).toBe(12);
    expect(costMinor('1.005', 1, 'USD')).toBe(101); // as a float this would be 100
    expect(costMinor('0.10', 3, 'USD')).toBe(30);
    expect(costMinor('24.50', 0, 'USD')).toBe(0);
  });

  it('knows currencies without and with three decimals', () => {
    expect(costMinor('150', 3, 'JPY')).toBe(450);
    expect(costMinor('150.5', 1, 'JPY')).toBe(151);
    expect(costMinor('1.234', 2, 'KWD')).toBe(2468);
  });

  it('is exact for whole cents and whole birds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 999_999 }),
        fc.integer({ min: 0, max: 6000 }),
        (cents, birds) => {
          const price = `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;
          expect(costMinor(price, birds, 'USD')).toBe(Number(BigInt(cents) * BigInt(birds)));
        },
      ),
    );
  });
});

describe('isPrice', () => {
  it.each(['0', '3.10', '0.000001', '999999999', '12.5'])('takes %s', (text) => {
    expect(isPrice(text)).toBe(true);
  });

  it.each([
    '',
    '-1',
    '+1',
    '1.',
    '.5',
    '1,50',
    '1e3',
    '1.2345678',
    '12 ',
    'free',
    'NaN',
    3.1,
    null,
    undefined,
  ])('refuses %p', (given) => {
    expect(isPrice(given)).toBe(false);
  });
});

describe('bagsFor', () => {
  it('rounds up to whole bags, but not past an exact fit', () => {
    expect(bagsFor(45.36, 22.68)).toBe(2);
    expect(bagsFor(45.37, 22.68)).toBe(3);
    expect(bagsFor(0, 22.68)).toBe(0);
    expect(bagsFor(0.3, 0.1)).toBe(3); // 0.3 ÷ 0.1 is a little under 3 as a float
  });

  it('holds the feed, with less than a bag to spare', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 1, max: 1500, noNaN: true }),
        (kg, bagKg) => {
          const bags = bagsFor(kg, bagKg);
          expect(bags * bagKg).toBeGreaterThanOrEqual(kg - 1e-5);
          expect((bags - 1) * bagKg).toBeLessThan(kg);
        },
      ),
    );
  });
});
