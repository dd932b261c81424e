import { describe, expect, it } from '@jest/globals';
import { newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

describe('light for hens', () => {
  it('never shortens the wanted day', () => {
    const { laying } = plannedBatch(
      newRequest({ batch: { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } }),
    );
    const wanted = laying!.light.map((step) => step.wanted.value);
    expect(wanted).toEqual([...wanted].sort((a, b) => a - b));
    expect(wanted.length).toBeGreaterThan(5);
  });
});

describe('litter', () => {
  it('fills a brooder of 2 × 3 m with 0.54 m³ at the start', () => {
    const plan = plannedBatch(
      newRequest({
        batch: { brooderId: 'brooder' },
        facilities: [newBrooder({ lengthM: 3, widthM: 2 })],
      }),
    );
    expect(plan.space.litter!.start.value).toBeCloseTo(0.54, 6); // 6 m² × 0.09 m
  });
});
