import { addDays, daysBetween } from '../calendar/plain-date.js';
import { daysOfWork, usualDays, workFrame, type WorkFrame } from '../plan/work/days-of-work.js';
import { jobsOfSet } from '../plan/work/job-sets.js';
import { workPlanOf } from '../plan/work/work-plan.js';
import { workOutlookOf, type WorkOutlook } from '../plan/work/work-outlook.js';
import { seededRandom } from '../schedule/random.js';
import { hoursOf as hoursOfTask } from '../plan/tasks/task-hours.js';
import { rowById, type Tables } from '../tables/tables.js';
import { climateFromMonthlyMeans, percentile } from '../weather/climate.js';
import { EXAMPLE_FARM } from './example-farm.js';
import { drawnRun } from '../weather/drawn-year.js';
import { monthsIn } from './climate-given.js';
import type { Given, Topic } from './given.js';
import { latestStart } from './printed-network.js';

/** Central Illinois, monthly averages from memory: lows and highs, °C; rain, mm. */
const MIN_C = [-9, -7, -1, 5, 11, 16, 18, 17, 12, 6, 0, -6];
const MAX_C = [0, 2, 9, 17, 23, 28, 30, 29, 25, 18, 10, 2];
const RAIN_MM = [45, 45, 70, 95, 110, 95, 95, 85, 85, 75, 75, 60];
const YEARS = 300;
/** Fortnights from 14 April on stand for the 41 days from 10 April to 20 May. */
const FROM = '2027-04-14';
const BEFORE = '2027-05-13';
const DAYS = 41;
const FORTNIGHTS_DAYS = 42;

/** A household that has only what a check gives it. */
const NOBODY_ELSE = {
  ...{ work: [], unplanned: [], progress: [], groundChecks: [], handovers: [] },
  seed: 1,
} as const;

/** Many springs of a garden on silt loam; rows of one run share it. */
const kept = new WeakMap<Tables, WorkOutlook>();

function outlookOf(tables: Tables): WorkOutlook {
  let outlook = kept.get(tables);
  if (!outlook) {
    outlook = workOutlookOf(
      {
        farm: { ...EXAMPLE_FARM, latitudeDeg: 40.5, gardenSoilId: 'silt-loam' },
        climate: climateFromMonthlyMeans(MIN_C, MAX_C, 6, RAIN_MM),
        tables,
        today: '2027-03-31',
        people: [{ id: 'a', name: 'Adult', away: [] }],
        ...NOBODY_ELSE,
        ownJobs: [],
        history: [],
      },
      YEARS,
    );
    kept.set(tables, outlook);
  }
  return outlook;
}

function fieldDays({ tables, text }: Given): number {
  const share = text('share') as 'tenth' | 'half' | 'ninetieth';
  const spring = outlookOf(tables).workable.filter(({ from }) => FROM <= from && from < BEFORE);
  return spring.reduce((sum, span) => sum + span[share], 0) * (DAYS / FORTNIGHTS_DAYS);
}

/** The days of a garden on silt loam at a place, from a day on. */
function frameOf(given: Given, today: string, days: number): WorkFrame {
  const { tables, number } = given;
  const farm = {
    ...EXAMPLE_FARM,
    latitudeDeg: number('latitudeDeg'),
    gardenSoilId: 'silt-loam',
  };
  const climate = climateFromMonthlyMeans(
    monthsIn(given, 'minC'),
    monthsIn(given, 'maxC'),
    6,
    monthsIn(given, 'rainMm'),
  );
  return workFrame({ tables, farm, climate, today, groundChecks: [] }, days);
}

/** Days that a plan made on a day of winter takes as fit, beyond any forecast. */
function plannedFitDays(given: Given): number {
  const { number, text } = given;
  const [today, from] = [`2027-${text('plannedOn')}`, `2027-${text('from')}`];
  const ahead = daysBetween(today, from);
  const until = ahead + number('days');
  const { isWorkable } = usualDays(frameOf(given, today, until));
  return isWorkable.subarray(ahead, until).reduce((sum, is) => sum + is, 0);
}

/** Years of one place, each with the days on which its ground can be worked. */
function fitDays(given: Given): number[] {
  const { tables, number, text } = given;
  const frame = frameOf(given, `2027-${text('from')}`, number('days'));
  const random = seededRandom(1);
  const habit = { ...tables.work.wetDay, dayToDay: tables.work.dayToDay.value };
  const { climate } = frame.place;
  const lies = frame.snowBeforeMm;
  return Array.from({ length: YEARS }, (_, year) => {
    const run = drawnRun(climate, frame.dayOfYear, habit, random);
    const { isWorkable } = daysOfWork(frame, run, lies[year % lies.length]!);
    return isWorkable.reduce((sum, is) => sum + is, 0);
  }).sort((a, b) => a - b);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Hours that everybody has of some jobs of a ready-made set. */
function hoursOf({ tables, text }: Given, count: number): number {
  const names = text('jobs').split(' ');
  const set = tables.jobSets.find(({ id }) => id === text('set'))!;
  return jobsOfSet(set, { anchorOn: '2027-06-01', count, today: '2026-06-01' })
    .filter(({ id }) => names.includes(id))
    .reduce((sum, { hours, conditions }) => sum + hours * (conditions.peopleNeeded ?? 1), 0);
}

/** Hours that everybody has of tasks of a batch, by their templates. */
function taskHours({ tables, text, number }: Given): number {
  return text('tasks')
    .split(' ')
    .map((id) => hoursOfTask(rowById(tables.taskTemplates, id), number('count')).hours)
    .reduce((sum, hours) => sum + hours, 0);
}

/** Hours for each of many, of which what is done once is no part worth naming. */
const MANY = 100;

/** Days between mowing and baling of a cut of hay in a plan of a week without rain. */
function hayDries({ tables }: Given): number {
  const [hay] = tables.jobSets.filter(({ id }) => id === 'hay');
  const today = '2027-06-01';
  const jobs = jobsOfSet(hay!, { anchorOn: today, count: 1, today });
  const dry = Array.from({ length: 30 }, (_, k) => ({
    ...{ date: addDays(today, k - 15), minC: 12, maxC: 27, rainMm: 0 },
  }));
  const climate = climateFromMonthlyMeans(MIN_C, MAX_C, 6, RAIN_MM);
  const plan = workPlanOf(
    {
      ...NOBODY_ELSE,
      farm: { ...EXAMPLE_FARM, latitudeDeg: 40.5 },
      climate: { ...climate, recent: dry.slice(0, 15), forecast: dry.slice(15) },
      tables,
      today,
      people: ['a', 'b'].map((id) => ({ id, name: id, away: [] })),
      ownJobs: jobs,
    },
    1,
  );
  const on = (id: string): string =>
    plan.jobs.find(({ key }) => key === `own/${id}`)!.pieces[0]!.date;
  return daysBetween(on('mow'), on('bale'));
}

/** Days on which work can be done, and hours that it takes. */
export const workChecks: Topic = {
  title: 'Days fit for work, and its hours',
  by: {
    'field-days': fieldDays,
    'planned-fit-days': plannedFitDays,
    'fit-days-mean': (given) => mean(fitDays(given)),
    'fit-days-share': (given) => mean(fitDays(given)) / given.number('days'),
    'fit-days-of-rank': (given) => percentile(fitDays(given), given.number('share')),
    'fit-days-reach': (given) =>
      mean(fitDays(given).map((days) => (given.number('reach') <= days ? 1 : 0))),
    'hay-dries': hayDries,
    'hours-of': (given) => hoursOf(given, given.number('count')),
    'task-hours': taskHours,
    'latest-start': ({ text }) => latestStart(text('of')),
    'move-hours': ({ tables }) => tables.work.herdMove.hoursBase,
    'hours-each': (given) => (hoursOf(given, MANY) - hoursOf(given, 0)) / MANY,
  },
};
