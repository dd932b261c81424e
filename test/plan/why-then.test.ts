import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../shared/calendar/plain-date.js';
import { findArrivals } from '../../shared/plan/arrival-finder.js';
import { whyThen } from '../../shared/plan/why-then.js';
import { newBatch, newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture } from '../support/pictures.js';
import { pictureOf, start } from '../support/starts.js';

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

describe('why a batch comes then', () => {
  it('is nothing of birds that are here, for which nobody chose a week', () => {
    expect(whyThen(comingOn('2026-09-07'), tables, 'batch')).toBeUndefined();
    const hens = start({ layers: { birds: 12, areHere: true } });
    expect(whyThen(pictureOf(hens), tables, hens.batches[0]!.id)).toBeUndefined();
  });

  it('is what decides, and no reason that sounds like its contrary', () => {
    const ohio = { latitudeDeg: 40.62, longitudeDeg: -82.51, elevationM: 400 };
    const rows = start({ ...ohio, meat: { birds: 50 }, layers: { birds: 20 } });
    const [meat, layers] = rows.batches.map(({ id }) => whyThen(pictureOf(rows), tables, id)!);
    // Too cold out before it, too hot at the end after it.
    expect(meat!.map(({ against }) => against)).toEqual([
      expect.stringMatching(/^Nights /),
      expect.stringMatching(/^Hot days /),
    ]);
    expect(layers![0]!.against).toMatch(/^The box travels in nights of /);
    for (const { against = '' } of [...meat!, ...layers!])
      expect(against).not.toMatch(/large enough/);
  });

  it('says of the weeks before and after what speaks more against them', () => {
    const beside = whyThen(comingOn(best.arrivalDate), tables, 'batch')!;
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
