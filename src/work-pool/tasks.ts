import { randomUUID } from 'node:crypto';
import { workerData } from 'node:worker_threads';
import { LRUCache } from 'lru-cache';
import type { Check } from '../../shared/checks/compare.js';
import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type { BatchChoice } from '../../shared/farm/batch-choice.js';
import type { ReadyGoal } from '../../shared/farm/ready-goal.js';
import type { Outline } from '../../shared/farm/paddock.js';
import { animalPicture, type AnimalPicture, type FarmPicture } from '../../shared/farm/picture.js';
import type { KeptPlan } from '../../shared/farm/kept-plan.js';
import type { ToldOfBatch } from '../../shared/farm/without-fact.js';
import type { FactOf, ToldFact } from '../../shared/farm/told-fact.js';
import type { Handover } from '../../shared/farm/handover.js';
import { planAnimals, type AnimalPlans } from '../../shared/plan/farm/animal-plans.js';
import {
  findArrivals,
  type ArrivalSearch,
  type ArrivalWeek,
} from '../../shared/plan/arrival-finder.js';
import { batchEnds } from '../../shared/plan/batch-request.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { compareChoices } from '../../shared/plan/compare/compare-choices.js';
import { whatMoves } from '../../shared/plan/compare/what-moves.js';
import { batchCost } from '../../shared/plan/cost/batch-cost.js';
import type { Fetching } from '../../shared/plan/cost/fetching.js';
import { readyBy, type ReadyBy } from '../../shared/plan/ready-by.js';
import { explainBatch, explainPasture } from '../../shared/plan/farm/explain-plans.js';
import { sitterSheet, type SitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { stopsOn } from '../../shared/plan/handover/sheet-stops.js';
import { planPasture, type PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import { changedByFact, type ChangedByFact } from '../../shared/plan/record/changed-by-fact.js';
import { nextYear, type NextYear } from '../../shared/plan/record/next-year.js';
import { plannedOf, type PlannedOfBatch } from '../../shared/plan/record/planned-of-batch.js';
import { recordOfBatches } from '../../shared/plan/record/record-of-batch.js';
import { stillToProcess } from '../../shared/plan/today/limit-alarms.js';
import { todayOf, type Today } from '../../shared/plan/today/today.js';
import {
  startFarm,
  type StartAsked,
  type StartedFarm,
} from '../../shared/plan/start/start-farm.js';
import type { WorkComparison } from '../../shared/plan/work/compare-plans.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import type { YearPlan } from '../../shared/plan/year/year-plan.js';
import {
  compareWork,
  planWork,
  workDueBefore,
  workOutlook,
  type DueWork,
} from '../../shared/plan/farm/work-of-farm.js';
import { yearOfFarm } from '../../shared/plan/farm/year-of-farm.js';
import { feedSpent, type FeedSpent } from '../../shared/plan/feed-spent/feed-spent.js';
import type { FeedTrip } from '../../shared/plan/feed-year/feed-trips.js';
import { tripsAhead } from '../../shared/plan/feed-year/trips-ahead.js';
import { feedYear, type FeedYear } from '../../shared/plan/feed-year/feed-year.js';
import type { Tables } from '../../shared/tables/tables.js';
import { climateFromDaily, type Climate, type DailyWeather } from '../../shared/weather/climate.js';
import { recordedFrost } from '../../shared/weather/frost.js';
import { cutOutline } from '../outlines/cut-outline.js';
import { outlinesOfGeoJson, type GeoJsonOutlines } from '../outlines/geojson.js';
import { joinOutlines, type Joined } from '../outlines/join-outlines.js';
import { jsonBytes } from './json-bytes.js';
import { signatureOf } from './signature.js';
import { parseDailyCsv, parseForecastCsv, type ImportedDay } from '../weather-files/daily-csv.js';

/** A batch to be planned, in the picture of its farm. */
export interface AskedBatch {
  readonly picture: FarmPicture;
  readonly batchId: string;
  readonly previousArrivalDate?: PlainDate;
}

/** A batch with what the farm's trips for feed cost by weight. */
export interface FetchedBatch extends AskedBatch {
  readonly fetching: Fetching | undefined;
}

/** A picture with the plan of its pasture, where that is there already. */
export interface PlannedPicture {
  readonly picture: FarmPicture;
  readonly pasture?: PasturePlan;
}

/** Chances of the work of a farm; how far they are, in thousandths, is written for all threads. */
export interface AskedOutlook extends PlannedPicture {
  readonly history: readonly DailyWeather[];
  readonly permille: Int32Array;
}

/** A picture with what was told that tells how batches went. */
export interface AskedRecord {
  readonly picture: FarmPicture;
  readonly facts: readonly ToldFact[];
}

/** The work of a farm, what is kept of it for the next time, and the day that it is on. */
export interface PlannedWork {
  /** The bytes of its JSON: most who ask are sent them as they are. */
  readonly plan: Uint8Array;
  readonly keep: KeptPlan;
  readonly day: Today;
  /** The plan of the pasture, where it was not there already. */
  readonly pasture?: PasturePlan | undefined;
}

/** A thread is given the tables when it starts, as they were checked when the program started. */
const tables = workerData as Tables;

/** Plans of the farms whose work was last asked for: most of what a household says moves none of them. */
const lastAnimals = new LRUCache<string, AnimalPlans>({ max: 8 });

const animalsOf = (asked: PlannedPicture): AnimalPlans => animalsAndKey(asked).plans;

function animalsAndKey({ picture, pasture }: PlannedPicture): { key: string; plans: AnimalPlans } {
  const animals = animalPicture(picture);
  const key = signatureOf(animals);
  const plans = lastAnimals.get(key) ?? planAnimals(animals, tables, pasture);
  lastAnimals.set(key, plans);
  return { key, plans };
}

/** Trips for feed of the same farms: work that is ticked off, all but a trip, moves none of them. */
const lastTrips = new LRUCache<string, readonly FeedTrip[]>({ max: 8 });

/** Plans of the animals with the trips for their feed, which are work as well. */
function fedAnimalsOf(asked: PlannedPicture): AnimalPlans {
  const { picture } = asked;
  const { suppliers, feedBought, herdFeedBought } = picture;
  const beside = { suppliers, feedBought, herdFeedBought };
  const { key: animalsKey, plans: animals } = animalsAndKey(asked);
  const key = `${animalsKey}/${signatureOf(beside)}`;
  const trips = lastTrips.get(key) ?? tripsAhead(picture, tables, animals);
  lastTrips.set(key, trips);
  return { ...animals, trips };
}

/**
 * Every plan is made by one of these, away from the thread that answers requests. Each takes one
 * value and returns one, both plain data, because they are copied from thread to thread. A plan
 * that is only sent on comes back as the bytes to send: copying those costs next to nothing.
 */
export const TASKS = {
  checkLargeBody: async (asked: { name: string; body: unknown }): Promise<void> =>
    (await import('./large-bodies.js')).checkLargeBody(asked),

  /** What the shares of an outline come to; undefined when they would be in pieces. */
  cutOutline: ({ outline, shares }: { outline: Outline; shares: readonly number[] }) =>
    cutOutline(outline, shares),

  joinOutlines: (outlines: readonly Outline[]): Joined => joinOutlines(outlines),

  outlinesOfGeoJson: (document: unknown): GeoJsonOutlines => outlinesOfGeoJson(document),

  climateFromDaily: ({
    history,
    latitudeDeg,
    ...source
  }: {
    history: readonly DailyWeather[];
    latitudeDeg: number;
    way: 'fetched' | 'csv';
    label: string;
  }): Climate => ({
    ...climateFromDaily(history, source),
    recordedFrost: recordedFrost(history, latitudeDeg),
  }),

  parseDailyCsv: ({ text, today }: { text: string; today: string }): ImportedDay[] =>
    parseDailyCsv(text, today),

  parseForecastCsv: ({ text, today }: { text: string; today: string }): ImportedDay[] =>
    parseForecastCsv(text, today),

  /** Birds that plans still come to in a calendar year. */
  stillToProcess: ({ picture, year }: { picture: FarmPicture; year: number }): number =>
    stillToProcess({ picture, batches: animalsOf({ picture }).batches }, `${year}`),

  /** Code and rows of the checks are read when somebody asks: no plan needs them. */
  runChecks: async (): Promise<Check[]> => {
    const [{ loadChecks }, { runChecks }] = await Promise.all([
      import('../reference/load-checks.js'),
      import('../../shared/checks/run-checks.js'),
    ]);
    return runChecks(loadChecks(tables), tables);
  },

  batchEnds: (picture: FarmPicture): Record<string, PlainDate> => batchEnds(picture, tables),

  planBatch: ({ picture, batchId, previousArrivalDate }: AskedBatch): Uint8Array =>
    jsonBytes(planBatch(picture, tables, batchId, previousArrivalDate)),

  batchCost: ({ picture, batchId, fetching }: FetchedBatch): Uint8Array => {
    const batch = picture.batches.find(({ id }) => id === batchId)!;
    const plan = planBatch(picture, tables, batchId);
    const moves = whatMoves({ picture, tables, batch, plan });
    return jsonBytes({ ...batchCost(picture, tables, batchId, { plan, fetching }), moves });
  },

  compareBatch: (
    asked: FetchedBatch & { readonly choices: readonly BatchChoice[] },
  ): Uint8Array => {
    const batch = asked.picture.batches.find(({ id }) => id === asked.batchId)!;
    const { picture, choices, fetching } = asked;
    return jsonBytes(compareChoices(picture, tables, batch, choices, fetching));
  },

  explainBatch: ({ picture, batchId }: AskedBatch): Uint8Array =>
    jsonBytes(explainBatch(picture, tables, batchId)),

  findArrivals: (asked: AskedBatch & { readonly search: ArrivalSearch }): ArrivalWeek[] =>
    findArrivals(asked.picture, tables, asked.batchId, asked.search),

  readyBy: (asked: AskedBatch & { readonly goal: ReadyGoal }): ReadyBy =>
    readyBy(asked.picture, tables, asked.batchId, asked.goal),

  /** The rows of a farm that begins: its plans are made to size what it needs. */
  startFarm: (asked: StartAsked): StartedFarm => startFarm(asked, { tables, newId: randomUUID }),

  planAsOrdered: (asked: { picture: AnimalPicture; batchId: string }): PlannedOfBatch =>
    plannedOf(planBatch(asked.picture, tables, asked.batchId)),

  changedByFact: ({
    picture,
    ...asked
  }: {
    readonly picture: FarmPicture;
    readonly fact: ToldFact;
    readonly facts: ToldOfBatch;
  }): ChangedByFact => changedByFact(picture, tables, asked),

  recordOfBatches: ({ picture, facts }: AskedRecord): HowItWent[] =>
    recordOfBatches(picture, tables, facts),

  nextYear: ({ year, ...asked }: AskedRecord & { readonly year: number }): NextYear =>
    nextYear(asked.picture, tables, { year, facts: asked.facts }),

  planPasture: (picture: AnimalPicture): PasturePlan => planPasture(picture, tables),

  explainPasture: (picture: FarmPicture): Uint8Array => jsonBytes(explainPasture(picture, tables)),

  /** The work, and the day it is out of the same plans of the animals. */
  planWork: (asked: PlannedPicture): PlannedWork => {
    const animals = fedAnimalsOf(asked);
    const { keep, ...plan } = planWork(asked.picture, tables, animals);
    const day = todayOf(asked.picture, tables, animals, plan);
    const { pasture } = asked.pasture ? {} : animals;
    return { plan: jsonBytes(plan), keep, day, pasture };
  },

  workDueBefore: (asked: PlannedPicture & { readonly before: string }): DueWork[] =>
    workDueBefore(asked.picture, tables, fedAnimalsOf(asked), asked.before),

  workOutlook: (asked: AskedOutlook): WorkOutlook =>
    workOutlook(asked.picture, tables, fedAnimalsOf(asked), asked.history, (share) =>
      Atomics.store(asked.permille, 0, Math.round(1000 * share)),
    ),

  compareWork: ({ now, then }: { now: PlannedPicture; then: PlannedPicture }): WorkComparison =>
    compareWork(
      tables,
      { picture: now.picture, animals: fedAnimalsOf(now) },
      { picture: then.picture, animals: fedAnimalsOf(then) },
    ),

  yearOfFarm: ({
    work,
    history,
    ...asked
  }: PlannedPicture & {
    readonly work: WorkPlan;
    readonly history: readonly DailyWeather[];
  }): YearPlan =>
    yearOfFarm(asked.picture, tables, { animals: fedAnimalsOf(asked), work, history }),

  /** What to buy for the animals of a farm in the year from today, out of the same plans of them. */
  feedYear: ({
    bought,
    ...asked
  }: PlannedPicture & { readonly bought: readonly FactOf<'bought'>[] }): FeedYear =>
    feedYear(asked.picture, tables, animalsOf(asked), bought),

  /** Where the feed money of the year up to today went; nothing where no receipt was told. */
  feedSpent: ({
    bought,
    ...asked
  }: PlannedPicture & { readonly bought: readonly FactOf<'bought'>[] }): FeedSpent | undefined =>
    feedSpent(asked.picture, tables, animalsOf(asked), bought),

  sheet: (asked: PlannedPicture & { handover: Handover; plan: WorkPlan }): SitterSheet =>
    sitterSheet(
      asked.handover,
      asked.plan,
      stopsOn(asked.picture, tables, animalsOf(asked), asked.handover),
      { people: asked.picture.people, jobs: asked.picture.jobs, tables },
    ),
};

export type TaskName = keyof typeof TASKS;
export type TaskInput<Name extends TaskName> = Parameters<(typeof TASKS)[Name]>[0];
export type TaskOutput<Name extends TaskName> = Awaited<ReturnType<(typeof TASKS)[Name]>>;
