import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import { KILLING } from '../processing-work.js';
import type { OwnJob } from '../../farm/job.js';
import { learnedHours, type LearnedHours } from './learned-hours.js';
import { movedWithEvent } from './hanging-jobs.js';
import { placeKeyDates } from './place-dates.js';
import {
  daysApart,
  isOften,
  isRepeated,
  jobOfTime,
  keyOfTime,
  oneTime,
  timesBetween,
} from '../../farm/repeated-jobs.js';
import { missedTimes } from '../../farm/missed-times.js';
import type { PlannedChore, Reading, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

const OWN: Sourced = { sources: [], mark: 'own-record' };

/** Reads the household's own jobs: each once, or as often as it comes. */
export function readOwnJobs(request: WorkRequest, reading: Reading): void {
  const { days, marks, needs, chores } = reading;
  const { today, ownJobs, tables } = request;
  const events = [...request.work.flatMap((work) => work.events), ...placeKeyDates(request)];
  const last = addDays(today, days - 1);
  const shown = tables.judgements.work.shownDoneDays.value;
  const busy = processingDaysOf(request);
  const repeated = new Set(ownJobs.filter(isRepeated).map(({ id }) => id));
  const jobs = ownJobs.map((job) => movedWithEvent(job, events));
  const missed = missedTimes(jobs, today);
  const learned = loggedOf(jobs, request);
  for (const job of jobs) {
    if (!isRepeated(job)) {
      const need = needOf(job, { key: `own/${job.id}`, today, days, repeated });
      needs.push(missed.has(job.id) ? { ...need, isOver: true } : need);
    } else if (isOften(job)) {
      const onDays = daysOf(job, { today, last, busy });
      if (0 < onDays.size) chores.push(choreOf(job, onDays, marks.get(`own/${job.id}`)?.ownHours));
    } else {
      // The time before today may still be open, and what was ticked of late can be undone.
      const from = addDays(today, -Math.max(daysApart(job.repeats), shown));
      for (const on of timesBetween(job, from, last)) {
        const key = keyOfTime(job.id, on);
        const once = needOf(oneTime(job, on), { key, today, days, repeated });
        const need = asLogged(once, learned.get(job.id));
        // The next time takes the place of one that was missed.
        needs.push(need.untilDay < 0 ? { ...need, isOver: true } : need);
      }
    }
  }
}

/** A job that comes again takes as long as its times before took. */
const asLogged = (need: WorkNeed, learned: LearnedHours | undefined): WorkNeed =>
  learned
    ? {
        ...need,
        hours: need.reckonedHours * learned.factor,
        learned: { ...learned, reckonedHours: need.reckonedHours },
      }
    : need;

/** What was logged of jobs that come again, each against the hours that the job has now. */
function loggedOf(
  jobs: readonly OwnJob[],
  { progress, tables }: WorkRequest,
): ReadonlyMap<string, LearnedHours> {
  const hours = new Map(jobs.map((job) => [job.id, job.hours]));
  const logs = progress.flatMap((mark) => {
    const kind = jobOfTime(mark.key);
    const reckonedHours = hours.get(kind ?? '');
    return kind === undefined || reckonedHours === undefined
      ? []
      : [{ ...mark, kind, reckonedHours }];
  });
  return learnedHours(logs, tables.judgements.work);
}

/** Dates on which the household processes birds, of those that are known. */
const processingDaysOf = ({ work }: WorkRequest): ReadonlySet<PlainDate> =>
  new Set(
    work.flatMap(({ tasks }) =>
      tasks.filter(({ templateId }) => KILLING.includes(templateId)).map(({ start }) => start),
    ),
  );

/** Days that are looked back to, so that what was done a day early is not asked for again. */
const LOOK_BACK_DAYS = 7;

/**
 * Days from today on which a job comes. On a day of processing it comes the day before instead, or
 * the one before that, where the job does not come on those anyhow.
 */
function daysOf(
  job: Parameters<typeof timesBetween>[0],
  { today, last, busy }: { today: PlainDate; last: PlainDate; busy: ReadonlySet<PlainDate> },
): Set<number> {
  const dates = timesBetween(job, addDays(today, -LOOK_BACK_DAYS), last);
  const own = new Set(dates);
  const moved = dates.map((date) => {
    if (!busy.has(date)) return date;
    const earlier = [1, 2].map((days) => addDays(date, -days)).filter((each) => job.dueOn <= each);
    return earlier.find((each) => !busy.has(each) && !own.has(each)) ?? date;
  });
  return new Set(moved.filter((date) => today <= date).map((date) => daysBetween(today, date)));
}

interface Around {
  readonly key: string;
  readonly today: PlainDate;
  readonly days: number;
  /** Jobs that come again: one that waits for such a job waits for that of its own day. */
  readonly repeated: ReadonlySet<string>;
}

function needOf(job: OwnJob, { key, today, days, repeated }: Around): WorkNeed {
  const {
    personIds,
    forWhom,
    waitsForId,
    waitDays = 0,
    mostWaitDays: atMostDays,
    ifLate,
    smallestPieceHours,
    harmedAtOrBelowC,
  } = job;
  const waitsKey = waitsForId !== undefined && repeated.has(waitsForId) ? `/${job.dueOn}` : '';
  return {
    key,
    name: job.name,
    row: OWN,
    hours: job.hours,
    reckonedHours: job.hours,
    fromDay: job.notBefore ? daysBetween(today, job.notBefore) : 0,
    dueDay: daysBetween(today, job.dueOn),
    untilDay: job.noUseAfter ? daysBetween(today, job.noUseAfter) : days - 1,
    conditions: job.conditions,
    ...inSoil(job),
    canBeSpread: job.canBeSpread,
    ...(smallestPieceHours === undefined ? {} : { smallestPieceHours }),
    priority: job.priority,
    ...(personIds === undefined ? {} : { personIds }),
    ...(forWhom === undefined ? {} : { forWhom }),
    waitsFor:
      waitsForId === undefined
        ? []
        : [
            {
              key: `own/${waitsForId}${waitsKey}`,
              days: waitDays,
              ...(atMostDays === undefined ? {} : { atMostDays }),
            },
          ],
    ...(ifLate === undefined ? {} : { ifLate }),
    ...(harmedAtOrBelowC === undefined ? {} : { harmedAtOrBelowC }),
    ...(job.isRawManure ? { isRawManure: true as const } : {}),
  };
}

/**
 * Work that asks for warm soil is done in it. Of a job from a ready-made set, and of one that was told
 * not to wait for dry ground, somebody has said what it needs.
 */
function inSoil({ conditions, setId }: OwnJob): Pick<WorkNeed, 'isInSoil'> {
  if (conditions.dryGround === false) return { isInSoil: false };
  if (conditions.soilAtLeastC !== undefined) return { isInSoil: true };
  return setId === undefined ? {} : { isInSoil: false };
}

/** What comes more often than weekly; two who do it together give its hours twice. */
function choreOf(
  { id, name, hours, conditions, personIds, forWhom }: OwnJob,
  onDays: ReadonlySet<number>,
  ownHours = hours,
): PlannedChore {
  return {
    key: `own/${id}`,
    name,
    hoursPerDay: ownHours * (conditions.peopleNeeded ?? 1),
    fromDay: Math.min(...onDays),
    toDay: Math.max(...onDays),
    onDays,
    conditions,
    ...(personIds === undefined ? {} : { personIds }),
    ...(forWhom === undefined ? {} : { forWhom }),
    row: OWN,
  };
}
