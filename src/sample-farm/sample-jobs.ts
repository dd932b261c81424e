import { addDays, weekdayOf, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Farm } from '../../shared/farm/farm.js';
import { jobsOfSet } from '../../shared/plan/work/job-sets.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import type { WarmPlace } from '../../shared/weather/warm-days.js';
import type { Said } from '../told/keep-facts.js';
import { nextMonthDay } from './sample-dates.js';
import type { MadeAt, SampleJob, SampleSeed, SampleSet, WeeklyJob } from './sample-seed.js';

/** What was done longer ago than this no longer stands among the jobs. */
const SHOWN_DAYS = 28;

/** The household's own jobs on a day, and what was told of those that were due before it. */
export function sampleJobs(
  { jobs, sets, farm }: SampleSeed,
  at: MadeAt,
): { readonly jobs: readonly OwnJob[]; readonly facts: readonly Said[] } {
  const { today } = at;
  const own = [
    ...jobs.map((job) => ('weekday' in job ? weekly(job, today) : yearly(job, today))),
    ...sets.flatMap((set) => taken(set, at, placeOf(farm))),
  ];
  return { jobs: own, facts: own.flatMap((job) => doneBefore(job, today)) };
}

function yearly({ due, windowDays, ...job }: SampleJob, today: PlainDate): OwnJob {
  const dueOn = nextMonthDay(due, addDays(today, -SHOWN_DAYS));
  return { ...job, dueOn, notBefore: addDays(dueOn, -windowDays) };
}

function weekly({ weekday, ...job }: WeeklyJob, today: PlainDate): OwnJob {
  const dueOn = addDays(today, (weekday - weekdayOf(today) + 7) % 7);
  return { ...job, dueOn, repeats: { every: 'weekdays', weekdays: [weekday] } };
}

/** The jobs of a set, their ids made those of the set too, so that no two sets share one. */
function taken(
  { setId, anchor, keptDays, count }: SampleSet,
  { today, jobSets, suffix }: MadeAt,
  place: WarmPlace,
): OwnJob[] {
  const set = jobSets.find(({ id }) => id === setId)!;
  const anchorOn = nextMonthDay(anchor, addDays(today, -keptDays));
  const own = (id: string): string => `${setId}-${id}-${suffix}`;
  return jobsOfSet(set, { anchorOn, count, today: addDays(today, -SHOWN_DAYS), place }).map(
    ({ id, waitsForId, ...job }) => ({
      ...job,
      id: own(id),
      ...(waitsForId === undefined ? {} : { waitsForId: own(waitsForId) }),
    }),
  );
}

const placeOf = ({ monthlyMinC, monthlyMaxC, latitudeDeg }: Farm): WarmPlace => ({
  // How far single nights lie below the average is nothing to the soil.
  climate: climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 0),
  latitudeDeg,
});

/** Told as done on the day it was due, in the hours it was set. */
function doneBefore({ id, dueOn, repeats }: OwnJob, today: PlainDate): Said[] {
  return repeats || today <= dueOn
    ? []
    : [{ kind: 'work-progress', about: `own/${id}`, on: dueOn, details: { doneOn: dueOn } }];
}
