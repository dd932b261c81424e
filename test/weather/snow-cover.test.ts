import { describe, expect, it } from '@jest/globals';
import { snowCover } from '../../shared/weather/snow-cover.js';
import { usualDays, workFrame } from '../../shared/plan/work/days-of-work.js';
import { suitsOf } from '../../shared/plan/work/days-that-suit.js';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import { tables } from '../support/factories.js';
import { TEN_HOUSEHOLDS, TODAY } from '../support/ten-households.js';

const table = { belowMeanC: 1, meltMmPerC: 2.74 };

describe('snowCover', () => {
  it('lies where it falls cold, and melts by so much for each degree above freezing', () => {
    const days = { minC: [-6, -2, 0, 2, 4], maxC: [0, 2, 2, 6, 8], rainMm: [10, 0, 0, 5, 0] };
    const { snowMm, toSoilMm } = snowCover(days, table);
    // Means -3, 0, 1, 4, 6: nothing melts at 0, 2.74 at 1, the rest of 7.26 at 4.
    expect([...snowMm]).toEqual([10, 10, 7.26, 0, 0]);
    expect([...toSoilMm].map((mm) => Number(mm.toFixed(2)))).toEqual([0, 0, 2.74, 12.26, 0]);
  });

  it('loses no water on the way', () => {
    const minC = Array.from({ length: 120 }, (_, day) => -12 + day / 6);
    const rainMm = minC.map((_, day) => (day % 4 === 0 ? 8 : 0));
    const { snowMm, toSoilMm } = snowCover({ minC, maxC: minC.map((c) => c + 9), rainMm }, table);
    const sum = (list: ArrayLike<number>) => Array.from(list).reduce((a, b) => a + b, 0);
    expect(sum(toSoilMm) + snowMm.at(-1)!).toBeCloseTo(sum(rainMm), 9);
    expect(Math.max(...snowMm)).toBeGreaterThan(50);
    expect(snowMm.at(-1)).toBe(0);
  });

  it('lies no more where somebody saw the ground clear', () => {
    const cold = { minC: [-9, -9, -9], maxC: [-3, -3, -3], rainMm: [7, 0, 0] };
    expect([...snowCover(cold, table, { isSeenClear: (day) => day === 1 }).snowMm]).toEqual([
      7, 0, 0,
    ]);
  });
});

describe('ground in March', () => {
  /** First day of a household's plan on which its ground can be worked. */
  const firstFit = (name: string): number => {
    const [, picture] = TEN_HOUSEHOLDS.find(([each]) => each === name)!;
    const { isWorkable, isWintry } = usualDays(workFrame({ ...picture, tables }, 70));
    const day = isWorkable.indexOf(1);
    expect(isWintry[day]).toBe(0);
    return day;
  };

  // Statewide crop reports of fit field days begin in the first week of April: common knowledge there.
  it('is no garden yet in the North, and is one in the South', () => {
    const until = (date: string): number => daysBetween(TODAY, date);
    expect(firstFit('one alone')).toBeGreaterThan(until('2027-04-01')); // Vermont
    expect(firstFit('three generations')).toBeGreaterThan(until('2027-03-20')); // Wisconsin
    expect(firstFit('no machine')).toBeLessThan(until('2027-03-20')); // Missouri
  });

  const [, vermont] = TEN_HOUSEHOLDS.find(([each]) => each === 'one alone')!;
  const firstFitOn = (today: string, more: Partial<typeof vermont.climate> = {}): string => {
    const place = { ...vermont, climate: { ...vermont.climate, ...more }, tables, today };
    return addDays(today, usualDays(workFrame(place, 130)).isWorkable.indexOf(1));
  };

  it('lies under the snow of the whole winter, whenever the plan is made', () => {
    const seen = ['2027-01-05', '2027-02-10', '2027-03-15', '2027-04-01'].map((on) =>
      firstFitOn(on),
    );
    const days = seen.map((on) => daysBetween(seen[0]!, on));
    expect([Math.min(...days), Math.max(...days)]).toEqual([0, 0]);
  });

  it('has no beds begun on it before, for want of a fit day within the week', () => {
    const days = usualDays(workFrame({ ...vermont, tables }, 130));
    const asks = { dryGround: true, dryDaysInRow: 2 };
    const starts = suitsOf(asks, days, tables.work.wetDay.rainMm)!;
    expect(starts.indexOf(1)).toBeGreaterThanOrEqual(days.isWorkable.indexOf(1));
    expect(starts.some((is, day) => is === 1 && days.isWorkable[day] === 0)).toBe(false);
    expect(starts.includes(1)).toBe(true);
  });

  it('is fit earlier after a measured winter without snow, later after one with much', () => {
    const winter = (rainMm: number) => ({
      recent: Array.from({ length: 120 }, (_, day) => ({
        ...{ date: addDays(TODAY, day - 120), minC: -9, maxC: -3, rainMm },
      })),
    });
    const [bare, deep] = [firstFitOn(TODAY, winter(0)), firstFitOn(TODAY, winter(4))];
    expect(bare < firstFitOn(TODAY)).toBe(true);
    expect(firstFitOn(TODAY) < deep).toBe(true);
  });

  it('has no snow of a winter before last, nor any in most years where little falls', () => {
    const fall = workFrame({ ...vermont, tables, today: '2027-10-20' }, 10);
    expect(fall.snowBeforeMm.every((mm) => mm === 0)).toBe(true);
    const [, south] = TEN_HOUSEHOLDS.find(([each]) => each === 'a slot in July')!;
    const years = workFrame({ ...south, tables }, 10).snowBeforeMm;
    expect(years.filter((mm) => 10 < mm).length).toBeLessThan(years.length / 4);
  });

  it('is on days of the forecast as in most of the years but for a day, not under the snow of a few', () => {
    const today = '2027-02-20';
    const [, south] = TEN_HOUSEHOLDS.find(([each]) => each === 'a slot in July')!;
    const forecast = Array.from({ length: 10 }, (_, day) => ({
      ...{ date: addDays(today, day), minC: 3, maxC: 14, rainMm: 0 },
    }));
    const climate = { ...south.climate, forecast };
    const { isWorkable, beside } = usualDays(workFrame({ ...south, climate, tables, today }, 30));
    const years = beside!.years.map((year) => year.isWorkable);
    const isFitInMost = forecast.map(
      (_, day) => years.filter((is) => is[day] === 1).length > years.length / 2,
    );
    expect(isFitInMost).toContain(true);
    const differs = isFitInMost.filter((is, day) => is !== (isWorkable[day] === 1));
    expect(differs.length).toBeLessThanOrEqual(1);
  });
});
