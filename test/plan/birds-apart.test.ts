import { expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const issuesOf = (batch: Partial<Batch>) =>
  plannedBatch(
    newRequest({ batch: { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets', ...batch } }),
  ).issues.filter(({ code }) => code === 'birds-apart');

it('says how long pullets that are bought in stay apart from older hens', () => {
  const soon = { moveOutDate: '2027-05-20', joinsOlderFlock: true };
  const [found] = issuesOf({ arrivalDate: '2027-05-05', hatchToArrivalDays: 1, ...soon });
  expect(found!.text).toContain('Keep them apart until');
  expect(found!.text).toMatch(/4 Jun|Jun 4/);
  expect(issuesOf({ arrivalDate: '2027-05-05', ...soon, moveOutDate: '2027-06-04' })).toEqual([]);
  expect(issuesOf({ arrivalDate: '2027-05-05', ...soon, joinsOlderFlock: false })).toEqual([]);
});
