import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { daysOfWork, usualDays, workFrame } from '../../../shared/plan/work/days-of-work.js';
import { suitsOf } from '../../../shared/plan/work/days-that-suit.js';
import { seededRandom } from '../../../shared/schedule/random.js';
import { drawnRun } from '../../../shared/weather/drawn-year.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS, TODAY } from '../../support/ten-households.js';

const { wetDay, dayToDay } = tables.work;
const habit = { ...wetDay, dayToDay: dayToDay.value };
const count = (is: Uint8Array, from: string, until: string): number =>
  is
    .subarray(daysBetween(TODAY, from), daysBetween(TODAY, until))
    .reduce((sum, day) => sum + day, 0);
const mean = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / of.length;
/**
 * Three standard errors of twenty years, which stand for all, and a day of rounding. The usual rain,
 * which the days are chosen from, has up to a tenth fewer dry days than years have.
 */
function bound(counts: readonly number[]): number {
  const about = mean(counts);
  return 1 + 0.1 * about + 3 * Math.sqrt(mean(counts.map((n) => (n - about) ** 2)) / 20);
}

describe.each(TEN_HOUSEHOLDS)('days beyond the forecast: %s', (_, picture) => {
  const place = { ...picture, tables };
  const frame = workFrame(place, 120);
  const usual = usualDays(frame);
  const random = seededRandom(7);
  const lies = frame.snowBeforeMm;
  const years = Array.from({ length: 100 }, (_, year) =>
    daysOfWork(
      frame,
      drawnRun(picture.climate, frame.dayOfYear, habit, random),
      lies[year % lies.length]!,
    ),
  );

  it('are fit to work the ground as often as in a hundred drawn years, no more and no less', () => {
    for (const [from, until] of [
      ['2027-04-15', '2027-05-20'],
      ['2027-05-20', '2027-07-10'],
    ] as const) {
      const counts = years.map(({ isWorkable }) => count(isWorkable, from, until));
      const off = Math.abs(count(usual.isWorkable, from, until) - mean(counts));
      expect([from, off <= bound(counts)]).toEqual([from, true]);
    }
  });

  it('do not go away before whoever waits for them', () => {
    for (const gone of [12, 20]) {
      const later = usualDays(workFrame({ ...place, today: addDays(TODAY, gone) }, 60));
      const stay = usual.isWorkable.subarray(gone, gone + 60);
      const lost = stay.reduce(
        (n, is, day) => (is === 1 && later.isWorkable[day] === 0 ? n + 1 : n),
        0,
      );
      expect([gone, lost]).toEqual([gone, 0]);
    }
  });

  it('are warm enough for a bound that the averages miss as often as in those years', () => {
    const night = mean([...usual.minC.subarray(30, 60)]);
    for (const nightMinAtLeastC of [night + 1, night + 3]) {
      const asks = { nightMinAtLeastC };
      const fit = (of: typeof usual): number =>
        count(suitsOf(asks, of, wetDay.rainMm)!, '2027-04-14', '2027-05-14');
      const counts = years.map(fit);
      expect(mean(counts)).toBeGreaterThan(2);
      expect(Math.abs(fit(usual) - mean(counts))).toBeLessThanOrEqual(bound(counts));
    }
  });

  it('are the same days seen from a week later', () => {
    const later = usualDays(workFrame({ ...place, today: addDays(TODAY, 7) }, 113));
    const differ = [...later.isWorkable].filter((is, day) => is !== usual.isWorkable[day + 7]);
    expect(differ.length).toBeLessThanOrEqual(2);
  });
});
