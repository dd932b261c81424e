import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatBound,
  formatChance,
  formatInput,
  formatMoney,
  formatPrice,
  formatMeasured,
  formatTyped,
  formatValue,
  formatYears,
  minorDigits,
} from '../../shared/units/format.js';
import type { Unit } from '../../shared/units/unit.js';

const metric = { units: 'metric', currency: 'EUR' } as const;
const us = { units: 'us', currency: 'USD' } as const;

describe('formatPrice', () => {
  it('has the sign of its currency, its usual decimals and what was typed beyond them', () => {
    expect(formatPrice('24.5', 'USD')).toBe('$24.50');
    expect(formatPrice('0.175', 'USD')).toBe('$0.175');
    expect(formatPrice('1200', 'EUR')).toBe('€1,200.00');
    expect(formatPrice('300', 'JPY')).toBe('¥300');
  });
});

describe('formatInput', () => {
  it('keeps two digits of what is less than one, and is a value otherwise', () => {
    expect(formatInput(0.2, 'rainMm', us)).toBe('0.0079 in');
    expect(formatInput(4.1, 'rainMm', us)).toBe('0.16 in');
    expect(formatInput(0.15, 'L', us)).toBe('0.04 gal');
    expect(formatInput(12.345, 'kg', us)).toBe('27.2 lb');
    expect(formatInput(0, 'kg', us)).toBe('0 lb');
    expect(formatInput(1e-9, 'kg', metric)).toBe('0 kg');
    expect(formatInput(0.2, 'm', us)).toBe(formatValue(0.2, 'm', us));
    expect(formatInput(0.002, 'chance', us)).toBe('hardly ever');
  });
});

describe('formatValue', () => {
  it.each([
    [2.5, 'kg', '2.5 kg', '5.51 lb'],
    [12.345, 'kg', '12.3 kg', '27.2 lb'],
    [1234.567, 'kg', '1,235 kg', '2,722 lb'],
    [43.2, 'g', '43 g', '1.5 oz'],
    [0.139, 'm2', '0.14 m²', '1.5 ft²'],
    [7.2, 'degC', '7.2 °C', '45 °F'],
    [-17.8, 'degC', '-17.8 °C', '0 °F'],
    [6, 'K', '6 °C', '10.8 °F'],
    [8.25, 'L', '8.3 L', '2.2 gal'],
    [0.95, 'share', '95 %', '95 %'],
    [12, 'bags', '12 bags', '12 bags'],
    [1, 'bags', '1 bag', '1 bag'],
    [1, 'day', '1 day', '1 day'],
    [1, 'eggs', '1 egg', '1 egg'],
    [1, 'bales', '1 bale', '1 bale'],
    [0.6, 'bales', '1 bale', '1 bale'], // as it is written, not as it is stored
    [0, 'bales', '0 bales', '0 bales'],
    [4046.86, 'ha', '0.4 ha', '1 acre'],
    [1.609, 'km', '1.61 km', '1 mile'],
    [3.2, 'km', '3.2 km', '1.99 miles'],
    [-1, 'day', '-1 day', '-1 day'],
    [107, 'count', '107', '107'],
    [1.82, 'ratio', '1.82', '1.82'],
    [750.4, 'W', '750 W', '750 W'],
    [100, 'kgPerHa', '100 kg/ha', '89 lb/acre'],
    [0.42, 'kgPerL', '0.42 kg/L', '26 lb/ft³'],
    [-0.001, 'kg', '0 kg', '0 lb'],
  ] as [number, Unit, string, string][])(
    'writes %d %s as "%s" and "%s"',
    (value, unit, inMetric, inUs) => {
      expect(formatValue(value, unit, metric)).toBe(inMetric);
      expect(formatValue(value, unit, us)).toBe(inUs);
    },
  );

  it('writes dates by name and words as they are', () => {
    expect(formatValue('2027-04-21', 'date', us)).toBe('Wed, Apr 21, 2027');
    expect(formatValue('2027-04-21', 'date', { ...us, today: '2027-12-31' })).toBe('Wed, Apr 21');
    expect(formatValue('2027-04-21', 'date', { ...metric, today: '2026-12-31' })).toBe(
      'Wed 21 Apr 2027',
    );
    expect(formatValue('plywood', 'text', us)).toBe('plywood');
    expect(formatValue('yes', 'count', us)).toBe('yes');
  });

  it('writes money with the sign and the decimals of the currency', () => {
    expect(formatValue(123456, 'money', us)).toBe('$1,234.56');
    expect(formatValue(123456, 'money', metric)).toBe('€1,234.56');
    expect(formatValue(500, 'money', { units: 'metric', currency: 'JPY' })).toBe('¥500');
  });

  it('writes money for a kilogram as money for a pound in US units', () => {
    expect(formatValue(1000, 'moneyPerKg', metric)).toBe('€10.00 a kg');
    expect(formatValue(1000, 'moneyPerKg', us)).toBe('$4.54 a lb'); // 10 × 0.45359
    expect(formatValue(80, 'moneyPerL', metric)).toBe('€0.80 a liter');
    expect(formatValue(80, 'moneyPerL', us)).toBe('$3.03 a gallon'); // 0.80 × 3.785412
  });
});

describe('formatTyped and formatBound', () => {
  it('name one of a unit as one', () => {
    expect(formatTyped(1, 'day', us)).toBe('1 day');
    expect(formatTyped(1.5, 'day', us)).toBe('1.5 days');
    expect(formatTyped(4046.8564224, 'ha', us)).toBe('1 acre');
    expect(formatBound(1, 'day', us, 'min')).toBe('1 day');
    expect(formatBound(14, 'day', us, 'max')).toBe('14 days');
    expect(formatTyped(4.2, 'h', us)).toBe('4 h 12 min');
    expect(formatTyped(-1.5, 'h', us)).toBe('-1 h 30 min');
    expect(formatBound(0.05, 'h', us, 'min')).toBe('3 min');
    expect(formatBound(23.99, 'h', us, 'max')).toBe('23 h 59 min');
  });
});

describe('a number', () => {
  it('is written as the language of the browser writes it', () => {
    const writer = new Intl.NumberFormat('en', { maximumFractionDigits: 4 });
    const small = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
    const any = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(small, any), (value) => {
        // As typed: of a kilogram at most four decimals, of six digits.
        const expected = writer.format(Number(Number(value.toPrecision(6)).toFixed(4)) + 0);
        expect(formatTyped(value, 'kg', metric)).toBe(`${expected} kg`);
      }),
    );
  });
});

describe('formatMeasured', () => {
  it('keeps the tenth that was read, however tall', () => {
    expect(formatMeasured(12.5, 'cm', { ...us, units: 'metric' })).toBe('12.5 cm');
    expect(formatMeasured(8.9, 'cm', us)).toBe('3.5 in');
    expect(formatMeasured(30, 'cm', { ...us, units: 'metric' })).toBe('30 cm');
  });
});

describe('formatMoney and minorDigits', () => {
  it('know two, no and three decimals', () => {
    expect(['USD', 'JPY', 'KWD'].map(minorDigits)).toEqual([2, 0, 3]);
    expect(formatMoney(5, 'USD')).toBe('$0.05');
    expect(formatMoney(0, 'USD')).toBe('$0.00');
  });
});

describe('formatChance', () => {
  it.each([
    [0.04, 'hardly ever'],
    [0.11, 'about 1 year in 10'],
    [0.73, 'about 7 years in 10'],
    [0.98, 'nearly every year'],
  ])('says %d', (share, said) => {
    expect(formatChance(share)).toBe(said);
  });
});

describe('formatYears', () => {
  it.each([
    [0.9, 'in', '9 in 10'],
    [1 - 0.9, 'of', '1 of 10'], // not quite 0.1 in a computer
    [0.95, 'years in', '19 years in 20'],
    [0.75, 'of', '15 of 20'],
    [0.99, 'of', '99 of 100'],
    [2 / 3, 'of', '67 of 100'],
  ])('says %f as whole years', (share, between, words) => {
    expect(formatYears(share, between)).toBe(words);
  });
});

describe('a chance', () => {
  it('is said as years of ten, not as a percentage', () => {
    expect(formatValue(0.254, 'chance', { units: 'us', currency: 'USD' })).toBe(
      'about 3 years in 10',
    );
    expect(formatValue(0.98, 'chance', { units: 'us', currency: 'USD' })).toBe('nearly every year');
  });
});
