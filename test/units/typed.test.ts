import { describe, expect, it } from '@jest/globals';
import { readTyped } from '../../shared/units/typed.js';
import type { Unit, UnitSystem } from '../../shared/units/unit.js';

const stored = (text: string, unit: Unit, system: UnitSystem, typedAs?: 'percent'): number => {
  const typed = readTyped(text, { unit, system, typedAs });
  if (typed.is !== 'value') throw new Error(`${text}: ${JSON.stringify(typed)}`);
  return typed.stored;
};

describe('readTyped', () => {
  it.each([
    ['8', 'm', 'metric', 8],
    ['8', 'm', 'us', 2.4384],
    ['8 ft', 'm', 'metric', 2.4384],
    ['8ft', 'm', 'us', 2.4384],
    ['5\'6"', 'm', 'us', 1.6764],
    ['5 ft 6 in', 'm', 'metric', 1.6764],
    ['2,44 m', 'm', 'us', 2.44],
    ['244 cm', 'm', 'metric', 2.44],
    ['1/2', 'mm', 'us', 12.7],
    ['1 1/2 in', 'mm', 'metric', 38.1],
    ['12 mm', 'mm', 'us', 12],
    ['10 in', 'cm', 'metric', 25.4],
    ['60 °F', 'degC', 'metric', 140 / 9],
    ['60°', 'degC', 'us', 140 / 9],
    ['60F', 'degC', 'metric', 140 / 9],
    ['-5', 'degC', 'metric', -5],
    ['−5 °C', 'degC', 'us', -5],
    ['50 lbs', 'kg', 'metric', 22.6796185],
    ['5 lb 8 oz', 'kg', 'us', 2.49475804],
    ['25 kg', 'kg', 'us', 25],
    ['10 gal', 'L', 'metric', 37.85411784],
    ['15 cu ft', 'freezerL', 'metric', 424.75269888],
    ['15', 'freezerL', 'us', 424.75269888],
    ['2 acres', 'm2', 'us', 8093.7128448],
    ['1.5 ha', 'm2', 'metric', 15000],
    ['64 sq ft', 'm2', 'metric', 5.94579456],
    ['64 ft²', 'm2', 'metric', 5.94579456],
    ['1.5 kW', 'W', 'us', 1500],
    ['8 weeks', 'day', 'us', 56],
    ['1,200', 'W', 'us', 1200],
    ['-2', 'm', 'metric', -2],
    ['1 050,5', 'm', 'metric', 1050.5],
    ['1\u202f050', 'm', 'metric', 1050],
    ['12 500 kg', 'kg', 'us', 12500],
    ['1 234 567.5', 'W', 'us', 1234567.5],
    ['.5', 'm', 'metric', 0.5],
    ['72 %', 'share', 'metric', 0.72],
    ['1 h 30 min', 'h', 'metric', 1.5],
    ['1:30', 'h', 'us', 1.5],
    ['45 minutes', 'h', 'metric', 0.75],
    ['2.5', 'h', 'us', 2.5],
    ['2 hrs', 'h', 'us', 2],
    ['1 bale', 'bales', 'us', 1],
    ['1 bag', 'bags', 'metric', 1],
    ['1 egg', 'eggs', 'us', 1],
    ['1 mile', 'km', 'us', 1.609344],
    ['1 acre', 'ha', 'us', 4046.8564224],
  ] as [string, Unit, UnitSystem, number][])(
    'reads "%s" for %s in a %s form as %d',
    (text, unit, system, expected) => {
      expect(Math.abs(stored(text, unit, system) - expected)).toBeLessThan(1e-5);
    },
  );

  it.each(['1 05', '1050 500', '1 500 1/2', '1 2', '12 34 567'])(
    'takes no blank for one between thousands in "%s"',
    (text) => expect(readTyped(text, { unit: 'm', system: 'metric' }).is).toBe('unread'),
  );

  it('reads percent with and without its sign', () => {
    expect(stored('5 %', 'ratio', 'us', 'percent')).toBe(5);
    expect(stored('5', 'ratio', 'us', 'percent')).toBe(5);
  });

  it('says what it understood when the unit was another', () => {
    expect(readTyped('8 ft', { unit: 'm', system: 'metric' })).toMatchObject({
      understood: '2.4384 m',
    });
    expect(readTyped('8 m', { unit: 'm', system: 'metric' })).not.toHaveProperty('understood');
  });

  it.each([
    ['75W', 'longitude', -75, '75° west'],
    ['75.3° W', 'longitude', -75.3, '75.3° west'],
    ['W 75.3', 'longitude', -75.3, '75.3° west'],
    ['-75.3', 'longitude', -75.3, '75.3° west'],
    ['75', 'longitude', 75, '75° east'],
    ['42° 53\' 30" N', 'latitude', 42.891667, '42.891667° north'],
    ['33.5 south', 'latitude', -33.5, '33.5° south'],
    ['0', 'latitude', 0, '0° north'],
  ] as const)('reads "%s" as the %s %d', (text, typedAs, value, understood) => {
    expect(readTyped(text, { unit: 'ratio', system: 'us', typedAs })).toEqual({
      is: 'value',
      stored: value,
      understood,
    });
  });

  it.each([
    ['75 N', 'ratio', 'longitude', 'takes E or W'],
    ['-75 W', 'ratio', 'longitude', 'either the minus sign or W'],
    ['abc', 'm', undefined, 'is not a number'],
    ['8 kg', 'm', undefined, '“kg” is not understood here'],
    ['8 lb', 'count', undefined, 'write the number alone.'],
    ['5 6', 'm', undefined, 'Write one number'],
    ['1e3', 'm', undefined, 'not understood'],
    ['--2', 'm', undefined, 'is not a number'],
    ['1/0', 'm', undefined, 'fraction'],
    ['1.2.3', 'm', undefined, 'is not a number'],
    ['1,234', 'm', undefined, 'write 1234 or 1.234'],
  ] as const)('refuses "%s" for %s (%s): %s', (text, unit, typedAs, why) => {
    const typed = readTyped(text, { unit, system: 'metric', typedAs });
    expect(typed.is === 'unread' && typed.why).toContain(why);
  });

  it('takes nothing for nothing', () => {
    expect(readTyped('  ', { unit: 'm', system: 'us' })).toEqual({ is: 'empty' });
  });
});
