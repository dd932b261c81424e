import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../shared/calendar/plain-date.js';
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
    const { because, isOnlyLess } = whyBest(comingOn(best.arrivalDate), tables, 'batch')!;
    const reason = best.reasons.find(({ text }) => text === because)!;
    expect(isOnlyLess).toBe(0 < reason.points);
    const others = weeks.flatMap(({ reasons }) => reasons.filter((r) => r.code === reason.code));
    expect(Math.max(...others.map(({ points }) => points))).toBeGreaterThan(reason.points);
  });

  it('praises no week by what it is worst in', () => {
    const why = whyBest(comingOn(worst.arrivalDate), tables, 'batch')!.because;
    const [heaviest] = [...worst.reasons].sort((a, b) => b.points - a.points);
    expect(why).not.toBe(heaviest!.text);
  });

  it('says of the weeks before and after what speaks more against them', () => {
    const { beside } = whyBest(comingOn(best.arrivalDate), tables, 'batch')!;
    expect(beside.map(({ arrivalDate }) => daysBetween(best.arrivalDate, arrivalDate))).toEqual([
      -28, 28,
    ]);
    for (const { arrivalDate, against } of beside) {
      const week = weeks.find((each) => each.arrivalDate === arrivalDate)!;
      const reason = week.reasons.find(({ text }) => text === against);
      const same = best.reasons.filter(({ code }) => code === reason?.code);
      // A week that is about as good is taken few points off.
      if (!reason) expect(Math.abs(week.score - best.score)).toBeLessThan(20);
      else expect(reason.points).toBeGreaterThan(Math.max(...same.map(({ points }) => points)));
    }
    expect(beside.some(({ against }) => against !== undefined)).toBe(true);
  });
});
