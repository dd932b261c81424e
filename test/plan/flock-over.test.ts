import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { HeadChange } from '../../shared/farm/head-count.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';
import { notFiniteIn } from './not-finite.js';

const ARRIVED = '2027-05-05';
const PRICES = { eggDozen: '4.50', feedPerBag: { starter: '18', grower: '19', layer: '20' } };
const FLOCKS: readonly Partial<Batch>[] = [
  { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets', prices: PRICES },
  { purpose: 'meat', prices: PRICES },
];
/** The day after they came, before the first egg, in lay, and years later. */
const DAYS = ['2027-05-06', '2027-06-20', '2027-12-01', '2028-12-01'];
const ENDS: readonly Pick<HeadChange, 'change' | 'birds' | 'isLast'>[] = [
  { change: 'died', birds: 20 },
  { change: 'gone', birds: 20 },
  { change: 'gone', birds: 5, isLast: true },
  // More than there were, of birds of which nobody told how many came.
  { change: 'died', birds: 50 },
];

describe('a flock that is all gone', () => {
  it.each(FLOCKS)('still has a plan without a number that is none: $purpose', (more) => {
    for (const date of DAYS) {
      for (const end of ENDS) {
        const plan = plannedBatch(
          newRequest({
            batch: { ...more, arrivalDate: ARRIVED, wantedBirds: 15, orderedBirds: 20 },
            today: date,
            headChanges: [{ batchId: 'new', date, ...end }],
          }),
        );
        expect(notFiniteIn(plan)).toEqual([]);
      }
    }
  });
});

describe('hens that are kept on', () => {
  it.each(['2028-12-01', '2029-12-01', '2030-12-01', '2031-12-01', '2033-05-01'])(
    'have a plan without a number that is none: %s',
    (today) => {
      const [layers] = FLOCKS;
      const plan = plannedBatch(
        newRequest({ batch: { ...layers, arrivalDate: ARRIVED, orderedBirds: 20 }, today }),
      );
      expect(notFiniteIn(plan)).toEqual([]);
      expect(plan.laying!.eggsInAll!.value).toBeGreaterThan(plan.laying!.eggsInYear.value);
    },
  );
});
