import { describe, expect, it } from '@jest/globals';
import { tablesIn } from '../../shared/tables/in-own-units.js';
import { formatHour } from '../../shared/units/dates.js';
import { formatPrice, formatValue } from '../../shared/units/format.js';
import { inOwnUnits } from '../../shared/units/own-units.js';
import { tables } from '../support/factories.js';

describe('inOwnUnits', () => {
  it.each([
    ['below 29 °C (85 °F), two people', 'below 85 °F, two people', 'below 29 °C, two people'],
    ['say 37.2 to 37.8 °C (99 to 100 °F)', 'say 99 to 100 °F', 'say 37.2 to 37.8 °C'],
    ['grass at 15 cm (6 in) or more', 'grass at 6 in or more', 'grass at 15 cm or more'],
    ['to 74 °C (165 °F; from memory).', 'to 165 °F (from memory).', 'to 74 °C (from memory).'],
    ['3 °C (5 °F) below, 8 cm (3 in)', '5 °F below, 3 in', '3 °C below, 8 cm'],
    ['dry soil (firm underfoot)', 'dry soil (firm underfoot)', 'dry soil (firm underfoot)'],
    ['at 32 °C (of turkeys)', 'at 32 °C (of turkeys)', 'at 32 °C (of turkeys)'],
  ])('takes those of the farm out of “%s”', (text, us, metric) => {
    expect(inOwnUnits(text, 'us')).toBe(us);
    expect(inOwnUnits(text, 'metric')).toBe(metric);
  });

  it('leaves no degrees of the other system in the cautions', () => {
    for (const { text, title } of Object.values(tables.cautions)) {
      expect(inOwnUnits(`${title} ${text}`, 'us')).not.toMatch(/°C/);
      expect(inOwnUnits(`${title} ${text}`, 'metric')).not.toMatch(/°F/);
    }
  });

  it('leaves none in the tables of a farm, whose rows are else the same', () => {
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
