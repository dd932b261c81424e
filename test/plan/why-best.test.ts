import { describe, expect, it } from '@jest/globals';
import { findArrivals } from '../../shared/plan/arrival-finder.js';
import { whyBest } from '../../shared/plan/why-best.js';
import { newBatch, newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture } from '../support/pictures.js';

const TODAY = '2026-11-25';
const { climate, farm } = newRequest({});
const comingOn = (arrivalDate: string) =>
  newPicture({
    ...{ farm, climate, today: TODAY },
    facilities: [newBrooder()],
    batches: [{ ...newBatch({ brooderId: 'brooder', arrivalDate }), id: 'batch' }],
  });
const weeks = findArrivals(comingOn('2027-05-19'), tables, 'batch', {
  from: '2026-12-30',
  to: '2027-12-01',
});
const best = weeks.find(({ rank }) => rank === 1)!;
const worst = weeks.reduce((a, b) => (b.score < a.score ? b : a));

describe('whyBest', () => {
  it('is a reason of the week itself, and one that other weeks lose points by', () => {
    const why = whyBest(comingOn(best.arrivalDate), tables, 'batch')!;
    const reason = best.reasons.find(({ text }) => text === why)!;
    const others = weeks.flatMap(({ reasons }) => reasons.filter((r) => r.code === reason.code));
    expect(Math.max(...others.map(({ points }) => points))).toBeGreaterThan(reason.points);
  });

  it('praises no week by what it is worst in', () => {
    const why = whyBest(comingOn(worst.arrivalDate), tables, 'batch');
    const [heaviest] = [...worst.reasons].sort((a, b) => b.points - a.points);
    expect(why).not.toBe(heaviest!.text);
  });
});
