import { describe, expect, it } from '@jest/globals';
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
});
