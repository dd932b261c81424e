import { describe, expect, it } from '@jest/globals';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

describe('manure nitrogen', () => {
  it('of one fast-growing bird on grass stays under the 53 g of its whole life (from memory)', () => {
    const plan = plannedBatch(
      newRequest({
        batch: {
          penId: 'pen',
          arrivalDate: '2027-05-26',
          leaveAgeDays: 48,
          moveOutDate: '2027-06-16',
        },
        facilities: [{ kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 9, count: 2 }],
      }),
    );
    const { nitrogen, ground } = plan.outdoors;
    const gPerBird =
      (1000 * nitrogen!.value * (ground!.value / 10000)) / plan.leaving!.birdsToProcess;
    expect(gPerBird).toBeGreaterThan(20);
    expect(gPerBird).toBeLessThan(53);
  });
});
