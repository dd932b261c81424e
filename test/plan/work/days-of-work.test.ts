import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { WorkConditions } from '../../../shared/farm/job.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

const today = '2027-04-05'; // a Monday
type Day = Partial<Omit<DailyWeather, 'date'>>;
const dated = (days: readonly Day[], first: string): DailyWeather[] =>
  days.map((day, k) => ({ date: addDays(first, k), minC: 5, maxC: 15, rainMm: 0, ...day }));

/** Why a job that asks for something stands where it does, and on which day, after a dry spell. */
function placedBy(conditions: WorkConditions, forecast: readonly Day[], yesterday: Day = {}) {
  const { climate, ...request } = newWork({ ownJobs: [newOwnJob({ conditions })] });
  const recent = dated([...new Array<Day>(29).fill({}), yesterday], addDays(today, -30));
  const weather = { ...climate, recent, forecast: dated(forecast, today) };
  const [job] = workPlanOf({ ...request, climate: weather }, 50).jobs;
  return [job!.pieces[0]!.date, job!.why];
}

describe('what makes a day unfit for a job', () => {
  const fine: Day[] = new Array<Day>(10).fill({});

  it.each<[string, WorkConditions, Day, string]>([
    ['rain, for work that wants none', { noRain: true }, { rainMm: 6 }, 'Rain'],
    ['rain, for work on dry ground', { dryGround: true }, { rainMm: 1 }, 'Rain'],
    ['a cold day', { dayMaxAtLeastC: 10 }, { maxC: 9.9 }, 'Too cold'],
    ['a hot day', { dayMaxAtMostC: 25 }, { maxC: 25.1 }, 'Too hot'],
    ['a cold night', { nightMinAtLeastC: 4 }, { minC: 3.9 }, 'Night too cold'],
  ])('is said in words: %s', (_, conditions, day, words) => {
    expect(placedBy(conditions, [day, ...fine])).toEqual([
      '2027-04-06',
      `${words} on Mon 5 Apr; due by Thu 20 May.`,
    ]);
  });

  it('is said in words: ground too wet after rain', () => {
    expect(placedBy({ dryGround: true }, fine, { rainMm: 40 })).toEqual([
      '2027-04-07',
      'Ground too wet on Mon 5 Apr and Tue 6 Apr; due by Thu 20 May.',
    ]);
  });

  it.each<[string, WorkConditions, Day]>([
    ['rain', {}, { rainMm: 30 }],
    ['less rain than makes a wet day', { noRain: true }, { rainMm: 0.9 }],
    ['a day as warm as asked for', { dayMaxAtLeastC: 10 }, { maxC: 10 }],
    ['a day as cool as asked for', { dayMaxAtMostC: 25 }, { maxC: 25 }],
    ['a night as mild as asked for', { nightMinAtLeastC: 4 }, { minC: 4 }],
    [
      'daylight and people, which are no weather',
      { daylight: true, peopleNeeded: 2 },
      { rainMm: 30 },
    ],
  ])('is not: %s', (_, conditions, day) => {
    expect(placedBy(conditions, [day, ...fine])).toEqual([
      today,
      'The first day there is time for it; due by Thu 20 May.',
    ]);
  });
});
