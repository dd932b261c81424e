import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { latestStart } from '../../shared/schedule/latest-start.js';
import { WorkDays } from '../../shared/schedule/work-days.js';
import { placedMinutes } from '../../shared/schedule/work.js';
import { newJob } from '../support/work-factories.js';

const together = Int32Array.of(60, 60, 0, 120, 60, 30);

describe('latestStart', () => {
  it('fills the days that suit backward from the end', () => {
    const job = { minutes: 120, smallestPieceMinutes: 30, fromDay: 0 };
    expect(latestStart(job, 5, together, undefined)).toBe(3); // 30 + 60 + 30 of 120
    expect(latestStart(job, 4, together, Uint8Array.of(1, 1, 1, 0, 1, 1))).toBe(1);
  });

  it('needs one whole day for work in one go', () => {
    expect(latestStart({ minutes: 90, fromDay: 0 }, 5, together, undefined)).toBe(3);
    expect(latestStart({ minutes: 150, fromDay: 0 }, 5, together, undefined)).toBe(-1);
  });

  it('is never before the first day of the job', () => {
    expect(latestStart({ minutes: 90, fromDay: 4 }, 5, together, undefined)).toBe(-1);
  });

  // The serial scheme places forward what this fills backward: begun then it is done in time, and
  // begun a day later it is not.
  it('is the last day from which the work alone is still done in time', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 4, maxLength: 12 }),
        fc.integer({ min: 1, max: 8 }),
        fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
        (hours, length, dry) => {
          const minutes = Int32Array.from(hours, (h) => 60 * h);
          const suits = Uint8Array.from(dry, (each) => (each ? 1 : 0));
          const byDay = minutes.length - 1;
          const job = newJob({ minutes: 60 * length, smallestPieceMinutes: 60, suits });
          const days = minutes.length;
          const problem = { days, workers: [{ minutes, lightMinutes: minutes }], jobs: [job] };
          const last = latestStart(job, byDay, minutes, suits);
          const inTime = (from: number): boolean => {
            const pieces = new WorkDays(problem).put({ ...job, untilDay: byDay }, from);
            return job.minutes <= placedMinutes(pieces);
          };
          if (0 <= last) expect(inTime(last)).toBe(true);
          expect(inTime(last + 1)).toBe(false);
        },
      ),
    );
  });
});
