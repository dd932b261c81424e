import { addDays } from '../../shared/calendar/plain-date.js';
import { EXAMPLE_FARM } from '../../shared/checks/example-farm.js';
import { compare, type Check } from '../../shared/checks/compare.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { JobOutlook } from '../../shared/plan/work/job-outlook.js';
import { workOutlookOf } from '../../shared/plan/work/work-outlook.js';
import { drawIndex, seededRandom } from '../../shared/schedule/random.js';
import type { Tables } from '../../shared/tables/tables.js';
import { fToC } from '../../shared/units/convert.js';
import {
  climateFromDaily,
  climateFromMonthlyMeans,
  type Climate,
  type DailyWeather,
} from '../../shared/weather/climate.js';
import type { ReadRows } from './read-rows.js';
import { LATITUDE_DEG, monthlyMeans, TOWN_FILE } from './town-checks.js';

const TOPIC = 'Chances of work, told from half the years and counted in the others';
const TODAY = '2027-03-10';
/** Every run lies within one year, so that even and odd years can be held apart. */
const DAYS = 200;
const JOBS = 90;
/** Springs of work that are drawn, each a household of its own. */
const SPRINGS = 3;
const MM_PER_IN = 25.4;

/** How a household tells the weather of its place. */
interface Way {
  readonly id: string;
  readonly name: string;
  readonly climate: Climate;
  readonly history: readonly DailyWeather[];
}

/** Jobs by the chance that is told of them. */
const BANDS = [
  { id: 'seldom', what: 'in fewer than 3 years in 10', from: 0, to: 0.3 },
  { id: 'sometimes', what: 'in 3 to 7 years in 10', from: 0.3, to: 0.7 },
  { id: 'likely', what: 'in 7 to 9 years in 10', from: 0.7, to: 0.9 },
  { id: 'sure', what: 'in more than 9 years in 10', from: 0.9, to: 1.01 },
] as const;

/** A spring of invented work: its chances from the even years of a town, against its odd years. */
export function chanceChecks(read: ReadRows, tables: Tables): readonly Check[] {
  const history = wetHistory(read);
  const isEven = ({ date }: DailyWeather): boolean => Number(date.slice(0, 4)) % 2 === 0;
  const known = history.filter(isEven);
  const unseen = history.filter((day) => !isEven(day));
  const shorter = structuredClone(tables);
  Object.assign(shorter.work.horizonDays, { value: DAYS, mostDays: DAYS });
  // What would help is not asked: no work is called unlikely.
  Object.assign(shorter.judgements.work.likelyShare, { value: 0 });
  return waysOf(known).flatMap((way) => {
    const told = jobsOf(shorter, way.climate, way.history);
    const counted = new Map(
      jobsOf(shorter, way.climate, unseen).map((job) => [job.key, job.chance]),
    );
    return BANDS.map(({ id, what, from, to }): Check => {
      const jobs = told.filter(({ chance }) => from <= chance && chance < to);
      const mean = (of: (job: JobOutlook) => number): number =>
        jobs.reduce((sum, job) => sum + of(job), 0) / jobs.length;
      return compare(
        TOPIC,
        {
          id: `chances-${way.id}-${id}`,
          what: `Share of years in which work is in time that is told to be so ${what}, by ${way.name}`,
          source: 'COLORADO_DAILY',
          where: `${TOWN_FILE}, odd years; ${jobs.length} of ${SPRINGS * JOBS} invented jobs`,
          mark: 'computed',
          theirs: mean(({ key }) => counted.get(key)!),
          unit: 'share',
          allowedAmount: 0.1,
          why: 'A share counted in 50 years is known to 0.06 (one standard error), and jobs of one spring share their weather.',
        },
        mean(({ chance }) => chance),
      );
    });
  });
}

const wetHistory = (read: ReadRows): DailyWeather[] =>
  read(TOWN_FILE).map((day) => ({
    date: day['date']!,
    minC: fToC(Number(day['tmin_f'])),
    maxC: fToC(Number(day['tmax_f'])),
    rainMm: MM_PER_IN * Number(day['prcp_in']),
  }));

const MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const waysOf = (known: readonly DailyWeather[]): readonly Way[] => {
  const daily = climateFromDaily(known, { way: 'csv', label: 'Record' });
  const rain = monthlyMeans(known, ({ rainMm }) => rainMm ?? 0);
  const typed = climateFromMonthlyMeans(
    monthlyMeans(known, ({ minC }) => minC),
    monthlyMeans(known, ({ maxC }) => maxC),
    6,
    rain.map((mm, month) => mm * MONTH_DAYS[month]!),
  );
  return [
    { id: 'years', name: 'its own years', climate: daily, history: known },
    { id: 'drawn', name: 'years drawn from a record', climate: daily, history: [] },
    { id: 'typed', name: 'years drawn from typed averages', climate: typed, history: [] },
  ];
};

const jobsOf = (
  tables: Tables,
  climate: Climate,
  history: readonly DailyWeather[],
): readonly JobOutlook[] =>
  Array.from({ length: SPRINGS }, (_, spring) => spring).flatMap(
    (spring) =>
      workOutlookOf({
        farm: { ...EXAMPLE_FARM, latitudeDeg: LATITUDE_DEG },
        climate,
        history,
        tables,
        today: TODAY,
        people: [
          { id: 'a', name: 'Adult A', away: [] },
          { id: 'b', name: 'Adult B', away: [] },
        ],
        work: [],
        unplanned: [],
        ownJobs: inventedJobs(spring),
        progress: [],
        groundChecks: [],
        handovers: [],
        seed: 1,
      }).jobs,
  );

/** Work of a spring, drawn by chance: some asks for dry days, dry ground or warmth, some for nothing. */
function inventedJobs(spring: number): OwnJob[] {
  const random = seededRandom(spring);
  const whole = (below: number): number => drawIndex(random, below);
  const asks: readonly OwnJob['conditions'][] = [
    { noRain: true },
    { dryGround: true },
    { dryGround: true, dayMaxAtLeastC: 15 },
    { noRain: true, nightMinAtLeastC: 4 },
    { noRain: true, dayMaxAtLeastC: 20 },
    {},
  ];
  return Array.from({ length: JOBS }, (_, i): OwnJob => {
    const from = 3 + whole(150);
    const due = from + 1 + whole(12);
    return {
      id: `job-${spring}-${i}`,
      name: `Job ${i}`,
      hours: 1 + whole(6),
      notBefore: addDays(TODAY, from),
      dueOn: addDays(TODAY, due),
      noUseAfter: addDays(TODAY, due + whole(8)),
      priority: (['could', 'should'] as const)[whole(2)]!,
      conditions: asks[whole(asks.length)]!,
      canBeSpread: whole(2) === 0,
    };
  });
}
