import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { DailyWeather } from '../../shared/weather/climate.js';
import { runsOfYears } from '../../shared/weather/day-run.js';

/** A record whose low is the year and whose high is the day of its record. */
const record = (from: string, days: number, isThere = (_date: string) => true): DailyWeather[] =>
  Array.from({ length: days }, (_, i) => addDays(from, i))
    .map((date, i) => ({ date, minC: Number(date.slice(0, 4)), maxC: i, rainMm: i % 3 }))
    .filter(({ date }) => isThere(date));

describe('runsOfYears', () => {
  it('takes the same days of the calendar out of every year that holds them', () => {
    const runs = runsOfYears(record('2001-01-01', 3 * 365), '2027-04-05', 100);
    expect(runs.map((run) => run.minC[0])).toEqual([2001, 2002, 2003]);
    expect(runs[0]!.maxC[0]).toBe(94); // 5 April is 94 days after 1 January
    expect(runs[0]!.maxC[99]).toBe(193);
  });

  it('goes on into the next year, and leaves out a year whose run is not over', () => {
    const runs = runsOfYears(record('2001-01-01', 3 * 365), '2027-11-20', 200);
    expect(runs.map((run) => [run.minC[0], run.minC[199]])).toEqual([
      [2001, 2002],
      [2002, 2003],
    ]);
  });

  it('begins on 1 March for a leap day in years that have none', () => {
    const runs = runsOfYears(record('2003-01-01', 3 * 365), '2028-02-29', 5);
    expect(runs.map((run) => run.maxC[0])).toEqual([59, 365 + 59, 731 + 59]);
  });

  it('fills a few missing days and leaves out a year with ten', () => {
    const lacks = (count: number) => (date: string) =>
      date < '2002-05-01' || addDays('2002-05-01', count) <= date;
    const nine = runsOfYears(record('2001-01-01', 730, lacks(9)), '2027-04-05', 100);
    expect(nine.map((run) => run.minC[0])).toEqual([2001, 2002]);
    expect(nine[1]!.maxC[30]).toBe(nine[1]!.maxC[25]); // 5 May takes the weather of 30 April
    const ten = runsOfYears(record('2001-01-01', 730, lacks(10)), '2027-04-05', 100);
    expect(ten.map((run) => run.minC[0])).toEqual([2001]);
  });

  it('finds no season in a record of five days', () => {
    expect(runsOfYears(record('2020-04-05', 5), '2027-04-05', 100)).toEqual([]);
    expect(runsOfYears([], '2027-04-05', 100)).toEqual([]);
  });
});
