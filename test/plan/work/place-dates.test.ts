import { describe, expect, it } from '@jest/globals';
import { addDays, datesFrom } from '../../../shared/calendar/plain-date.js';
import { nightsOfCover } from '../../../shared/plan/work/nights-of-cover.js';
import { placeKeyDates } from '../../../shared/plan/work/place-dates.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { recordedFrost } from '../../../shared/weather/frost.js';
import { frostFreeDays } from '../../../shared/weather/frost-free-days.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-04-05';
const request = newWork({ today });
const datesOf = (given: typeof request) =>
  Object.fromEntries(placeKeyDates(given).map(({ id, date }) => [id.slice(12), date]));

describe('key dates of a place', () => {
  it('come in the order of spring: bees, peas, corn, beans, and bloom is safe before the garden', () => {
    const dates = datesOf(request);
    const of = (id: string): string => dates[`${id}-2027`]!;
    expect(of('soil-peas') < of('soil-carrots')).toBe(true);
    expect(of('soil-carrots') < of('soil-corn')).toBe(true);
    expect(of('soil-corn') < of('soil-beans')).toBe(true);
    expect(of('swarming')).toBe(addDays(of('hives-open'), 21));
    expect(of('last-frost') < of('last-frost-safe')).toBe(true);
    expect(of('bloom-safe') < of('last-frost-safe')).toBe(true);
    expect(of('first-frost-safe') < of('first-frost')).toBe(true);
  });

  it('move with the weather of the year, and stay what they are in the next', () => {
    const usual = datesOf(request);
    const warm = Array.from({ length: 40 }, (_, k) => ({
      ...{ date: addDays(today, k - 30), minC: 9, maxC: 19 },
    }));
    const { climate } = newWork({ today });
    const early = datesOf({ ...request, climate: { ...climate, recent: warm } });
    expect(early['hives-open-2027']! < usual['hives-open-2027']!).toBe(true);
    expect(early['soil-peas-2027']! < usual['soil-peas-2027']!).toBe(true);
    expect(early['soil-peas-2028']).toBe(usual['soil-peas-2028']);
  });

  it('end and begin frost as the daily record did, whatever date was typed', () => {
    // Lows at or below freezing on the same two nights of every year.
    const history = datesFrom('2014-01-01', 13 * 365).map((date) => ({
      date,
      minC: ['05-12', '10-01'].includes(date.slice(5)) ? -1 : 8,
      maxC: 20,
    }));
    const { farm, climate } = request;
    const recorded = { ...climate, recordedFrost: recordedFrost(history, farm.latitudeDeg) };
    const dates = datesOf({ ...newWork({ today }), climate: recorded });
    expect(dates).toMatchObject({
      'last-frost-2027': '2027-05-12',
      'last-frost-safe-2027': '2027-05-12',
      'first-frost-2028': '2028-10-01',
    });
    expect(dates['bloom-safe-2027']).toBeUndefined();
  });

  it('leave out what never comes: soil in the tropics is warm all year', () => {
    const climate = climateFromMonthlyMeans(Array(12).fill(23), Array(12).fill(31), 3);
    const dates = datesOf({ ...newWork({ today }), climate });
    expect(Object.keys(dates).filter((id) => /^(soil|hives|swarm)/.test(id))).toEqual([]);
  });

  it('turn half a year later south of the equator', () => {
    const turned = (c: readonly number[]): number[] => [...c.slice(6), ...c.slice(0, 6)];
    const { farm } = request;
    const climate = climateFromMonthlyMeans(turned(farm.monthlyMinC), turned(farm.monthlyMaxC), 6);
    const south = {
      ...farm,
      latitudeDeg: -farm.latitudeDeg,
      lastFrost: '11-20',
      firstFrost: '03-28',
    };
    const dates = datesOf({ ...newWork({ today }), farm: south, climate });
    expect(dates['soil-peas-2027']!.slice(5, 7)).toMatch(/09|10|11/);
  });

  it('carry jobs along that are tied to them', () => {
    const on = '2027-05-01';
    const job = newOwnJob({ dueOn: on, tiedTo: { eventId: 'event/place/soil-peas-2027', on } });
    const [planned] = workPlanOf(newWork({ today, ownJobs: [job] }), 20).jobs;
    expect(planned!.latest).toBe(datesOf(request)['soil-peas-2027']);
  });
});

describe('nights of cover', () => {
  it('grow fewer the later it is put out, and are said beside the work', () => {
    const after = [30, 45, 60, 75].map((day) => nightsOfCover(request, day, 0));
    for (let k = 1; k < after.length; k++) {
      expect(after[k]!.nights).toBeLessThan(after[k - 1]!.nights);
      expect(after[k]!.chance).toBeLessThanOrEqual(after[k - 1]!.chance);
    }
    for (const { nights, chance } of after) expect(nights).toBeGreaterThanOrEqual(0.99 * chance);
    const job = newOwnJob({ notBefore: '2027-05-18', harmedAtOrBelowC: 0 });
    const [planned] = workPlanOf(newWork({ today, ownJobs: [job] }), 20).jobs;
    // Two days before the usual last frost: in somewhat more than half of the years.
    expect(planned!.why).toMatch(
      /a night of .* or less comes in [5-7] of 10 years, in such a year about \d+ nights? of cover/,
    );
  });
});

it('counts frost-free days across the turn of the year in the south', () => {
  expect(frostFreeDays('05-20', '09-28')).toBe(131);
  expect(frostFreeDays('11-20', '03-28')).toBe(128);
});
