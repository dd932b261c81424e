import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { herdDays } from '../../shared/pasture/herd-demand.js';
import { KG_PER_LB } from '../../shared/units/convert.js';
import { tables } from '../support/factories.js';

describe('animal units of a herd', () => {
  it('counts a nursing cow of 1,200 lb 1.2, with a calf over four months 1.5 (eXtension)', () => {
    const first = '2027-03-01';
    const days = 200;
    const { animalUnits: units } = herdDays(
      {
        id: 'h',
        name: 'Cows',
        groups: [
          {
            classId: 'cow-calf',
            head: 1,
            weightKg: 1200 * KG_PER_LB,
            calvesOn: addDays(first, 10),
          },
        ],
      },
      tables,
      {
        first,
        days,
        from: 0,
        minC: new Float64Array(days).fill(8),
        maxC: new Float64Array(days).fill(18),
        hotC: new Float64Array(days).fill(18),
        energyMcalPerKg: new Float64Array(800).fill(1.3),
      },
    );
    expect(units[129]!).toBeCloseTo(1.2, 6);
    expect(units[130]!).toBeCloseTo(1.5, 6);
  });
});
