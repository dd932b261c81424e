import { describe, expect, it } from '@jest/globals';
import { herdDays } from '../../../shared/plan/pasture/herd-day.js';
import { tables } from '../../support/factories.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const { farm, climate, paddocks } = newPastureRequest();

function needOf(classId: string, on: string, land: typeof paddocks): number {
  const herds = [newHerd({ groups: [newGroup({ classId, head: 5 })] })];
  const picture = newPicture({ farm, climate, today: on, herds, paddocks: land });
  return herdDays(picture, tables, { pasture: undefined, on })(herds[0]!)!.dryKg;
}

describe('what a herd eats on a farm without a paddock', () => {
  it.each(tables.cattle.classes.map(({ id }) => id))(
    'is, of a %s, hay in every month',
    (classId) => {
      const inWinter = needOf(classId, '2027-01-10', []);
      // Where nothing grows, who has land feeds hay as well.
      expect(inWinter).toBeCloseTo(needOf(classId, '2027-01-10', paddocks), 6);
      expect(needOf(classId, '2027-06-10', [])).toBeCloseTo(inWinter, 6);
      expect(inWinter).toBeGreaterThan(0);
    },
  );
});
