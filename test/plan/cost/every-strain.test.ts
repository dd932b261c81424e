import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../../shared/farm/batch.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { comparedBatch, costedBatch, movesOfBatch } from '../../support/pictures.js';
import { notFiniteIn } from '../not-finite.js';

const feedPerBag = Object.fromEntries(
  tables.feedPrograms.flatMap(({ phases }) => phases.map(({ id }) => [id, '20.00'])),
);
const PRICES = { perBird: '3.50', processingPerBird: '4.00', eggDozen: '4.00', feedPerBag };

const WAYS: readonly Partial<Batch>[] = [
  {},
  { wantedBirds: 1, orderedBirds: 1 },
  { processing: 'hired', slotDate: '2027-07-28' },
  { origin: 'hen', hatchToArrivalDays: 0 },
  { medicatedWithdrawalDays: 5, laterLossPercent: 90 },
  { targetLiveKg: 2.5, feedFactor: 2, wastePercent: 50 },
];

const cases = tables.strains.flatMap(({ id: strainId, purposes }) =>
  purposes.flatMap((purpose) =>
    WAYS.filter(
      (way) =>
        (purpose === 'meat' || way.processing === undefined) &&
        // No hen of chickens hatches turkeys here.
        (strainId !== 'turkey' || way.origin === undefined),
    ).map((way) => ({ strainId, purpose, ...way }) as Partial<Batch>),
  ),
);

describe('costs, comparison and what moves them', () => {
  it.each(cases)('are finite numbers for %o', (batch) => {
    const request = newRequest({
      facilities: [newBrooder()],
      products: [
        { id: 'h', kind: 'own-hour', name: 'An hour', price: '12.00' },
        { id: 'm', kind: 'meat', name: 'Meat', price: '9.00' },
      ],
      batch: newBatch({
        sex: batch.purpose === 'layers' && batch.origin !== 'hen' ? 'pullets' : 'straight-run',
        wantedBirds: 20,
        brooderId: 'brooder',
        prices: PRICES,
        ...batch,
      }),
    });
    const cost = costedBatch(request);
    expect(notFiniteIn(cost)).toEqual([]);
    expect(notFiniteIn(movesOfBatch(request))).toEqual([]);
    expect(notFiniteIn(comparedBatch(request, [{ wantedBirds: 3 }, { twoWeeksApart: 2 }]))).toEqual(
      [],
    );
    for (const { cost: week } of cost.stop?.weeks ?? [])
      expect(week!.value).toBeGreaterThanOrEqual(0);
    expect(cost.breakEven.mustBring.length).toBeGreaterThan(0);
  });
});
