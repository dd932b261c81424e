import type { PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { DailyWeather } from '../../weather/climate.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { isAllUntold } from '../came-untold.js';
import { placeKeyDates } from '../work/place-dates.js';
import { fittedDays } from '../work/fitted-days.js';
import { nextPlanned } from '../work/next-planned.js';
import type { WorkPlan } from '../work/planned-work.js';
import type { WorkRequest } from '../work/work-request.js';
import { awayRows } from './away-rows.js';
import { batchRowWithWork } from './batch-row.js';
import { herdRow } from './herd-row.js';
import { jobRows } from './job-rows.js';
import { isInSight, type YearRow } from './year-row.js';
import { yearSpan, type YearSpan } from './year-span.js';
import { yearWeather, type YearWeather } from './year-weather.js';
import { yearWeeks, type YearWeek } from './year-weeks.js';

/** The year on one page: thirteen months from this one on. */
export interface YearPlan {
  readonly today: PlainDate;
  readonly span: YearSpan;
  readonly weather: YearWeather;
  /** Batches, herds, sets of jobs, people away: those of which anything falls within the strip. */
  readonly rows: readonly YearRow[];
  /** The work that is planned first from today on, whether it is a date of a row or not. */
  readonly nextWork?: { readonly on: PlainDate; readonly words: string };
  readonly weeks: readonly YearWeek[];
  /** Batches and herds that are missing, because no plan of theirs can be made. */
  readonly unplanned: readonly string[];
}

/** The plans that a farm has, as the year is put together from them. */
export interface PlannedFarm {
  readonly animals: {
    readonly batches: readonly PlannedBatch[];
    readonly pasture?: PasturePlan;
    readonly unplanned: readonly string[];
  };
  /** What the work was planned from, and its plan. */
  readonly request: WorkRequest;
  readonly work: WorkPlan;
  /** Daily record of the place, in date order; may be empty. */
  readonly history: readonly DailyWeather[];
}

/** Puts the plans of a farm on one strip. Nothing is planned here. */
export function yearPlan(
  picture: FarmPicture,
  tables: Tables,
  { animals, request, work, history }: PlannedFarm,
): YearPlan {
  const { today, people, handovers, herds, jobs, progress } = picture;
  const span = yearSpan(today);
  const { pasture } = animals;
  const settled = new Set([...work.done, ...work.struckOut].map(({ key }) => key));
  const workOfBatch = { fitted: fittedDays(work), settled };
  const rows = [
    ...animals.batches
      .filter((batch) => !isAllUntold(batch, { ...picture, tables }))
      .map(({ id, plan }) => batchRowWithWork(id, plan, workOfBatch)),
    ...(pasture ? herds.map((herd) => herdRow(herd, pasture, span)) : []),
    ...jobRows({
      jobs,
      progress,
      events: [...request.work.flatMap(({ events }) => events), ...placeKeyDates(request)],
      planned: work.jobs,
      sets: tables.jobSets,
    }),
    ...awayRows(people, handovers),
  ];
  const next = nextPlanned(work, today);
  return {
    today,
    span,
    weather: yearWeather(picture, tables, history, span),
    rows: rows.filter((row) => isInSight(row, span)),
    ...(next && {
      nextWork: {
        on: next.on,
        words: `${next.job.belongsTo ? `${next.job.belongsTo.name}, ` : ''}${next.job.name}`,
      },
    }),
    weeks: yearWeeks(request, work, span),
    unplanned: animals.unplanned,
  };
}
