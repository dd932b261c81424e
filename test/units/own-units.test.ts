import { describe, expect, it } from '@jest/globals';
import { tablesIn } from '../../shared/tables/in-own-units.js';
import { formatHour } from '../../shared/units/dates.js';
import { formatPrice, formatValue } from '../../shared/units/format.js';
import { inOwnUnits } from '../../shared/units/own-units.js';
import { tables } from '../support/factories.js';

describe('a text with its figures in both systems', () => {
  it.each([
    ['nights of 7.2 °C (45 °F)', 'nights of 45 °F', 'nights of 7.2 °C'],
    ['29 to 32 °C (85 to 90 °F), then', '85 to 90 °F, then', '29 to 32 °C, then'],
    ['46 cm (18 in) above; 0.9 m (3 ft) away', '18 in above; 3 ft away', '46 cm above; 0.9 m away'],
    [
      'cook to 74 °C (165 °F; from memory)',
      'cook to 165 °F (from memory)',
      'cook to 74 °C (from memory)',
    ],
    ['two (or three) birds', 'two (or three) birds', 'two (or three) birds'],
  ])('reads in one of them: %s', (text, us, metric) => {
    expect(inOwnUnits(text, 'us')).toBe(us);
    expect(inOwnUnits(text, 'metric')).toBe(metric);
  });

  it('is nowhere in the tables of a farm, whose rows are else the same', () => {
    const own = tablesIn('us', tables);
    const { sources, ...rest } = own;
    expect(JSON.stringify(rest)).not.toMatch(/\d (°C|cm) \(\d/);
    expect(sources).toBe(tables.sources);
    expect(own.growthTables).toBe(tables.growthTables);
    expect(tablesIn('us', own)).toBe(own);
    expect(own.moveOut[0]!.rules[0]!.name).toBe('From 3 weeks, nights of 45 °F');
  });
});

describe('what people of a country say', () => {
  it('is an hour by its clock, a price by its coin, a small length in inches', () => {
    expect([0, 12, 22].map((hour) => formatHour(hour, 'us'))).toEqual(['12 am', '12 pm', '10 pm']);
    expect(formatHour(22, 'metric')).toBe('22:00');
    expect(formatPrice('0.17', 'USD')).toBe('$0.17');
    expect(formatPrice('3.028', 'USD')).toBe('$3.028');
    const reader = { units: 'us', currency: 'USD' } as const;
    expect(formatValue(0.0823, 'm', reader)).toBe('3.2 in');
    expect(formatValue(4.88, 'm', reader)).toMatch(/^16 ft/);
  });
});
