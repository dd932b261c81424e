import { dateIn } from '../../calendar/month-day.js';
import { frostDays } from '../place-frost.js';
import { addDays, daysBetween, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';
import type { JobSet, SetJob } from '../../tables/job-sets.js';
import { SOIL_DAYS, usualWarmDay, warmDayIn, type WarmPlace } from '../../weather/warm-days.js';
import type { DatedPlace } from './place-dates.js';

export const jobSetFormulas = {
  hours: {
    id: 'hours-of-set',
    title: 'Hours of a set of jobs',
    words:
      'A base plus an amount for each of the count, over the jobs of the set, for everyone who takes part.',
    symbols: 'H = Σ (b + v·n)·people',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** The events of the kind that a set hangs on, and moves along with where it is taken on such a day. */
export function eventsOfSet(
  { anchor, suggest }: JobSet,
  events: readonly KeyDate[],
): readonly KeyDate[] {
  const from = suggest?.from ?? anchor;
  // Days before or after a frost are no event.
  if (suggest?.from === 'last-frost') return [];
  const ofPlace = new RegExp(`^event/place/${from}-[0-9]{4}$`);
  return events.filter(({ id }) =>
    from === 'turn-out' ? id.endsWith('/turn-out') : ofPlace.test(id),
  );
}

/** The turn-out a set waits for: its herds must not come before the work is done. */
export const turnOutOf = (
  set: JobSet,
  events: readonly KeyDate[],
  today: PlainDate,
): KeyDate | undefined =>
  set.suggest?.from === 'turn-out'
    ? eventsOfSet(set, events)
        .filter(({ date }) => today <= date)
        .sort((a, b) => (a.date < b.date ? -1 : 1))[0]
    : undefined;

/**
 * The date a set is hung on unless the user says otherwise: that of this year while so much of its work
 * still lies ahead that somebody who has the hives or beds already is to be told of it, else the next.
 */
export function suggestedAnchor(
  set: JobSet,
  { farm, climate, tables, today }: DatedPlace,
): PlainDate {
  const { anchor, suggest } = set;
  const { last, first: begins } = frostDays({ farm, climate }, tables);
  const frost = anchor === 'first-frost' ? begins : last;
  const anchorIn = (year: number): PlainDate => {
    if (suggest?.from === 'hives-open') return hivesOpenIn({ farm, climate, tables, today }, year);
    return addDays(
      dateIn(year, frost),
      suggest?.from === 'last-frost' ? (suggest.offsetDays ?? 0) : 0,
    );
  };
  const first = [0, 1, 2].map((k) => anchorIn(yearOf(today) + k));
  const isWorthIt = (anchorOn: PlainDate): boolean => {
    const all = datedJobs(set, { anchorOn, count: 1 });
    return (
      tables.judgements.work.setAheadShare.value * all.length <=
      all.filter(({ dueOn }) => today <= dueOn).length
    );
  };
  return first.find(isWorthIt) ?? first[1]!;
}

/** Where it is always or never warm enough, the first of May. */
function hivesOpenIn(place: DatedPlace, year: number): PlainDate {
  const { dayMaxC, daysInRow } = place.tables.work.keyDates.hivesOpen;
  const warmth = { of: 'day', atLeastC: dayMaxC, daysInRow } as const;
  const { climate, farm } = place;
  const warmPlace = { climate, latitudeDeg: farm.latitudeDeg };
  const usual = usualWarmDay(warmPlace, warmth);
  return usual === undefined ? `${year}-05-01` : warmDayIn(warmPlace, warmth, { usual, year });
}

/** Hours of the jobs of a set in all, opened to what they rest on. */
export const hoursOfSet = (
  set: JobSet,
  jobs: readonly OwnJob[],
  { count, unit }: { readonly count: number; readonly unit: string },
): NumberQuantity =>
  quantity(
    `Hours of “${set.name}”`,
    jobs.reduce((sum, { hours, conditions }) => sum + hours * (conditions.peopleNeeded ?? 1), 0),
    'h',
    jobSetFormulas.hours,
    [input(`How many, ${unit}`, count, 'ratio', 'n'), input('Jobs', jobs.length, 'count')],
    { rows: [set] },
  );

/**
 * The jobs of a set on dates and in hours, those of which the last day is past left out and none
 * beginning before today. Their ids and `waitsForId` are those within the set. Tied to an event,
 * they move along with it.
 *
 * Hours: base plus an amount for each of the count; of each person where two work at once.
 */
export function jobsOfSet(set: JobSet, on: TakenOn): OwnJob[] {
  const { anchorOn, eventId, today } = on;
  const jobs = datedJobs(set, on).map((job) =>
    eventId === undefined ? job : { ...job, tiedTo: { eventId, on: anchorOn } },
  );
  const open = jobs.filter((job) => today <= lastDayOf(job));
  const ids = new Set(open.map(({ id }) => id));
  return open.map((job) => {
    const notBefore = job.notBefore! < today ? today : job.notBefore!;
    if (job.waitsForId === undefined || ids.has(job.waitsForId)) return { ...job, notBefore };
    // What it waits for is past, so that it waits for nothing.
    const { waitsForId: _gone, waitDays: _days, mostWaitDays: _most, ...free } = job;
    return { ...free, notBefore };
  });
}

/**
 * The jobs of a set for somebody who takes it in the middle of its season: nothing of it is late before
 * it was known. What is past its day but of use still is due by its last one.
 */
export const jobsToTake = (set: JobSet, on: TakenOn): OwnJob[] =>
  jobsOfSet(set, on).map((job) => (job.dueOn < on.today ? { ...job, dueOn: lastDayOf(job) } : job));

/** Jobs of a set that are over for its year, in its order. */
export const passedOfSet = (set: JobSet, on: TakenOn): OwnJob[] =>
  datedJobs(set, on).filter((job) => lastDayOf(job) < on.today);

interface TakenOn {
  readonly anchorOn: PlainDate;
  readonly count: number;
  readonly eventId?: string;
  readonly today: PlainDate;
  /** Where it is known, work in warm soil has its days once that is usually warm enough. */
  readonly place?: WarmPlace;
}

const lastDayOf = ({ noUseAfter, dueOn }: OwnJob): PlainDate => noUseAfter ?? dueOn;

const datedJobs = (
  set: JobSet,
  { anchorOn, count, place }: Pick<TakenOn, 'anchorOn' | 'count' | 'place'>,
): OwnJob[] =>
  set.jobs.flatMap((job) => {
    const warmOn = onWarmSoil(job, anchorOn, place);
    return Array.from({ length: job.times ?? 1 }, (_, k) =>
      dated(set, job, { anchorOn: warmOn, count, k }),
    );
  });

/**
 * The date that a job of a set hangs on: later by as many days as the soil is usually not warm enough
 * yet on its first day, so that as many are left for it afterward. That it keeps the length of its
 * window is common practice, no source.
 */
function onWarmSoil(
  { conditions: { soilAtLeastC: atLeastC }, firstOffsetDays }: SetJob,
  anchorOn: PlainDate,
  place: WarmPlace | undefined,
): PlainDate {
  if (!place || atLeastC === undefined) return anchorOn;
  const usual = usualWarmDay(place, { of: 'soil', atLeastC, daysInRow: SOIL_DAYS });
  if (usual === undefined) return anchorOn;
  const first = addDays(anchorOn, firstOffsetDays);
  const later = daysBetween(first, dateIn(yearOf(first), usual));
  return 0 < later && later < LATEST_SOIL_DAYS ? addDays(anchorOn, later) : anchorOn;
}

/** Soil that warms later than this after the first day of a job is another spring’s: a guess, no source. */
const LATEST_SOIL_DAYS = 90;

/** Of work too short for two of them, the usual piece is the smallest. */
const pieceOf = (
  { smallestPieceHours: least }: SetJob,
  hours: number,
): Pick<OwnJob, 'smallestPieceHours'> =>
  least === undefined || hours < 2 * least ? {} : { smallestPieceHours: least };

function dated(
  set: JobSet,
  job: SetJob,
  { anchorOn, count, k }: { anchorOn: PlainDate; count: number; k: number },
): OwnJob {
  const on = (offset: number): PlainDate => addDays(anchorOn, offset + k * (job.everyDays ?? 0));
  const hours = job.hoursBase + job.hoursPerUnit * count;
  return {
    id: idOf(job.id, k),
    name: job.times === undefined ? job.name : `${job.name}, ${k + 1} of ${job.times}`,
    hours: Math.max(0.1, Math.round(hours * 100) / 100),
    notBefore: on(job.firstOffsetDays),
    dueOn: on(job.dueOffsetDays),
    ...(job.lastOffsetDays === undefined ? {} : { noUseAfter: on(job.lastOffsetDays) }),
    priority: job.priority,
    conditions: job.conditions,
    canBeSpread: job.canBeSpread,
    ...pieceOf(job, hours),
    ...(job.harmedAtOrBelowC === undefined ? {} : { harmedAtOrBelowC: job.harmedAtOrBelowC }),
    ...(job.isRawManure ? { isRawManure: true } : {}),
    ...(job.waitsFor === undefined
      ? {}
      : {
          waitsForId: idOf(job.waitsFor, 0),
          waitDays: job.waitDays ?? 0,
          ...(job.mostWaitDays === undefined ? {} : { mostWaitDays: job.mostWaitDays }),
        }),
    ifLate: job.ifLate,
    setId: set.id,
  };
}

const idOf = (id: string, k: number): string => (k === 0 ? id : `${id}-${k + 1}`);
