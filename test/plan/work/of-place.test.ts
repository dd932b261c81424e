import { describe, expect, it } from '@jest/globals';
import { isLookedFor } from '../../../shared/plan/work/of-place.js';
import { newOwnJob } from '../../support/season-factories.js';

const hives = { id: 'event/place/hives-open-2027' };
const soil = { id: 'event/place/soil-beans-2027' };
const job = (more: Parameters<typeof newOwnJob>[0]) => [
  newOwnJob({ name: 'Fix the gate', ...more }),
];

describe('isLookedFor', () => {
  it.each([
    ['no job', [], [false, false]],
    ['a job of something else', job({}), [false, false]],
    ['a set of hives', job({ setId: 'hives' }), [true, false]],
    ['a set of the garden', job({ setId: 'garden-beds' }), [false, true]],
    ['a job that speaks of bees', job({ name: 'Feed the bees' }), [true, false]],
    [
      'a job with those letters in other words',
      job({ name: 'Archive beef seedling labels' }),
      [false, false],
    ],
    ['a job tied to it', job({ tiedTo: { eventId: soil.id, on: '2027-05-12' } }), [false, true]],
  ])('dates of hives and garden by the jobs there are: %s', (_what, jobs, told) => {
    expect([hives, soil].map((event) => isLookedFor(event, jobs))).toEqual(told);
  });
});
