import type { WorkConditions } from '../../farm/job.js';
import { FieldError } from '../../problems/field-problem.js';
import { RingError } from '../../schedule/activity-network.js';
import { seededRandom } from '../../schedule/random.js';
import { daysLeft } from '../../schedule/work-reasons.js';
import { fitWork, type FittedWork, type WorkLimits } from '../../schedule/work-search.js';
import type { EarlierWork } from '../../schedule/work-settling.js';
import type { WorkJob, WorkPiece, WorkPlacing, WorkProblem } from '../../schedule/work.js';
import type { WorkTable } from '../../tables/work-table.js';
import { asKeptForAnimals, withAnimalsFirst } from './animals-first.js';
import { goesOnAsKept } from './as-kept.js';
import { onSuitableDays } from './chore-days.js';
import { averageDays, usualDays, workFrame, type DaysOfWork } from './days-of-work.js';
import { earlierPieces, signatureOfPeople } from './kept-plan.js';
import { isNearAsKept } from './near-work.js';
import { withSpellsBound } from './spells-bound.js';
import { splitWhereShort } from './split-where-short.js';
import { withHoursForSpells } from './spell-hours.js';
import { suitsOfNeeds } from './suits-of-needs.js';
import type { WholeWork } from './whole-work.js';
import { workHorizonDays } from './work-horizon.js';
import { workHours, type WorkHours } from './work-hours.js';
import type { LookNeed, PlannedChore, WorkNeed } from './work-need.js';
import { workNeeds } from './work-needs.js';
import { canDo, workPeople } from './work-people.js';
import type { WorkRequest } from './work-request.js';

/** Plans to try: a few tenths of a second; fewer where an earlier plan is gone on from. */
const PLANS = 6000;
const PLANS_AGAIN = 700;
/** Of few jobs a plan is made faster, and more are tried. */
const MANY_JOBS = 120;
const MOST_TIMES = 6;
/**
 * A plan of many jobs is as good as it gets once so many tries have found nothing better. Of few jobs
 * the last percent is found later than that.
 */
const QUIET_PLANS = 1200;
/** Looks for a plan, at most: as many as a few tenths of a second take. Only very much work asks for more. */
export const MOST_LOOKS = 80e6;

const plansFor = ({ kept }: WorkRequest, jobs: number): number =>
  kept ? PLANS_AGAIN : goodPlans(jobs);

/** Plans to try for so many jobs, where none is gone on from. */
export const goodPlans = (jobs: number): number =>
  Math.round(PLANS * Math.min(MOST_TIMES, Math.max(1, MANY_JOBS / Math.max(1, jobs))));

/** How long a good plan of so many jobs is looked for, where none is gone on from. */
export const limitsFor = (jobs: number): WorkLimits => ({
  plans: goodPlans(jobs),
  looks: MOST_LOOKS,
  ...(MANY_JOBS < jobs ? { quietPlans: QUIET_PLANS } : {}),
});

/**
 * The problem of the work, solved: for the plan and for what looks further.
 *
 * @param plans to try, where it shall not go by the number of jobs
 * @param hasAnimalsFirst false: within people's hours alone, where what animals need has no place either
 * @param from pieces by key of the work to go on from, for a question that changes a little of it
 */
export function fitAll(
  given: WorkRequest,
  plans?: number,
  {
    hasAnimalsFirst = true,
    from,
  }: {
    readonly hasAnimalsFirst?: boolean;
    readonly from?: ReadonlyMap<string, readonly WorkPiece[]>;
  } = {},
): {
  work: WholeWork;
  chores: readonly PlannedChore[];
  looks: readonly LookNeed[];
  hours: WorkHours;
} {
  const horizon = workHorizonDays(given);
  const { request, frame, byAverages, read, chores } = readWork(given, horizon);
  const days = usualDays(frame, byAverages);
  const { done, struckOut } = read;
  const { dryEnough } = frame;
  const asked = (needs: readonly WorkNeed[]): { problem: WorkProblem; hours: WorkHours } => {
    const hours = workHours(request, { ...read, needs, chores }, horizon);
    const jobs = asHoursAllow(request, needs, jobsOf(request, needs, days, hours.onItsDay), hours);
    const { marginShare, marginSpareDays } = request.tables.judgements.work;
    const margin = {
      share: marginShare.value,
      leastMinutes: Math.round(60 * request.tables.work.smallestPieceHours.value),
      spareDays: marginSpareDays.value,
    };
    return { problem: { days: horizon, workers: hours.workers, jobs, margin }, hours };
  };
  const fitNeeds = (
    needs: readonly WorkNeed[],
    before?: WholeWork,
  ): { work: WholeWork; hours: WorkHours } => {
    const { problem: hard, hours } = asked(needs);
    const tries = plans ?? plansFor(given, needs.length);
    const begun = from
      ? needs.map(({ key }) => from.get(key) ?? [])
      : request.kept
        ? undefined
        : before?.fitted.plan;
    const { problem, fitted } = fitOrExplain(needs, () =>
      fitSoonAfter(hard, (each) =>
        begun ? goOnFrom(request, begun, each, tries) : fitOn(request, needs, each, tries),
      ),
    );
    const left = daysLeft(problem, fitted.plan);
    const found = { request, days, dryEnough, needs, problem, fitted, left, done, struckOut };
    return { work: found, hours };
  };
  if (!hasAnimalsFirst) return { ...fitNeeds(read.needs), chores, looks: read.looks };
  const mended = asKeptForAnimals(request, read.needs);
  const isAsKept = mended && isWorthGoingOn(request, mended, asked(mended).problem);
  const needs = isAsKept ? mended : read.needs;
  return { ...fitWithAnimalsFirst(needs, fitNeeds), chores, looks: read.looks };
}

/** The hours of some days: what chores and work of one set day leave of them, and where they lack. */
export function hoursOfDays(given: WorkRequest, days: number): WorkHours {
  const { request, read, chores } = readWork(given, days);
  return workHours(request, { ...read, chores }, days);
}

/** What there is to fit in, and the days for it. */
function readWork(given: WorkRequest, horizon: number) {
  const request = { ...given, people: workPeople(given.people, given.handovers) };
  const frame = workFrame(request, horizon);
  const byAverages = averageDays(frame);
  const read = workNeeds(request, horizon);
  const chores = onSuitableDays(read.chores, byAverages, request.tables.work.wetDay.rainMm);
  return { request, frame, byAverages, read, chores };
}

/** Whether what was bound to its day may stay so: people’s hours and the work of the next days are as they were. */
function isWorthGoingOn(
  request: WorkRequest,
  needs: readonly WorkNeed[],
  problem: WorkProblem,
): boolean {
  const { kept, today } = request;
  if (!kept) return false;
  const was = earlierPieces(request, needs, kept);
  return kept.plannedOn < today
    ? kept.madeBy === signatureOfPeople(request)
    : isNearAsKept(request, needs, { problem: withSoonAfter(problem, () => true), plan: was });
}

/** Fits work in again where animals are left without what they need, with that first. */
function fitWithAnimalsFirst<Found extends { readonly work: WholeWork }>(
  needs: readonly WorkNeed[],
  fit: (needs: readonly WorkNeed[], before?: WholeWork) => Found,
): Found {
  let found = fit(needs);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = withAnimalsFirst(found.work) ?? withSpellsBound(found.work);
    if (!next) break;
    found = fit(next, found.work);
  }
  return found;
}

/** Days from today in which nothing moves for what is far. */
const STAYS_DAYS = 7;

/** What waits for what waits: chains of such work are no longer than this. */
const MOST_ROUNDS = 4;

/**
 * Fits the work in so that what shall follow soon does, and without that where it would not be done
 * at all: hay that lies is better than none.
 */
function fitSoonAfter(
  asked: WorkProblem,
  fit: (problem: WorkProblem) => FittedWork,
): { problem: WorkProblem; fitted: FittedWork } {
  const problem = withSoonAfter(asked, () => true);
  const fitted = fit(problem);
  const isDone = (i: number): boolean => 0 < fitted.plan[i]!.length;
  // What waits for work that is not done either would not be done without its longest wait.
  const isKeptOut = ({ waitsFor }: WorkJob): boolean =>
    waitsFor.some(({ job, atMostDays }) => atMostDays !== undefined && isDone(job));
  if (problem.jobs.every((job, i) => isDone(i) || !isKeptOut(job))) return { problem, fitted };
  const looser = withSoonAfter(problem, isDone);
  return { problem: looser, fitted: fit(looser) };
}

const followsSoon = ({ waitsFor }: WorkJob): boolean =>
  waitsFor.some(({ atMostDays }) => atMostDays !== undefined);

/** Longest waits between work of set days, and of what is done in pieces, are left out. */
const withSoonAfter = (problem: WorkProblem, isAsked: (index: number) => boolean): WorkProblem => ({
  ...problem,
  jobs: problem.jobs.map((job, i) => {
    if (!followsSoon(job)) return job;
    const waitsFor = job.waitsFor.map(({ atMostDays, ...wait }) => {
      const isHeld = isAsked(i) && [job, problem.jobs[wait.job]!].every(isInOneGo);
      return atMostDays === undefined || !isHeld ? wait : { ...wait, atMostDays };
    });
    return { ...job, waitsFor };
  }),
});

const isInOneGo = ({ pinned, smallestPieceMinutes }: WorkJob): boolean =>
  !pinned && smallestPieceMinutes === undefined;

/**
 * Of the tries for a plan so many are made again where one is gone on from: little of it changes. It is
 * how long is searched, and says nothing of a farm.
 */
const SHARE_AGAIN = 0.2;

/** Goes on from a plan of which little has changed: it stays where it still can. */
const goOnFrom = (
  { seed }: WorkRequest,
  plan: WorkPlacing,
  problem: WorkProblem,
  tries: number,
): FittedWork =>
  fitWork(
    problem,
    {
      ...limitsFor(problem.jobs.length),
      plans: Math.max(Math.min(tries, PLANS_AGAIN), Math.round(SHARE_AGAIN * tries)),
    },
    seededRandom(seed),
    { plan, costPerMove: 0 },
  );

/** Fits the work in; where a day has gone by as it was planned, the plan only goes on. */
function fitOn(
  request: WorkRequest,
  needs: readonly WorkNeed[],
  problem: WorkProblem,
  plans: number,
): FittedWork {
  const { kept, seed, tables, today } = request;
  const fit = (tries: number, earlier?: EarlierWork): FittedWork =>
    fitWork(problem, { ...limitsFor(needs.length), plans: tries }, seededRandom(seed), earlier);
  if (!kept) return fit(plans);
  const was = earlierPieces(request, needs, kept);
  const { madeFor, madeBy } = kept;
  const isNear = kept.plannedOn === today && isNearAsKept(request, needs, { problem, plan: was });
  const earlier = {
    plan: was,
    // What changed is weeks off: nobody is to do otherwise today for that.
    ...(isNear ? { staysBeforeDay: STAYS_DAYS } : {}),
    costPerMove: tables.work.placing.moveCost,
    ...(madeFor === undefined ? {} : { madeFor }),
  };
  // Somebody who is new, or has other hours, shall take more than what nobody had time for.
  const isBySame = madeBy === undefined || madeBy === signatureOfPeople(request);
  if (kept.plannedOn < today && isBySame) {
    const goesOn = fit(1, earlier);
    if (goesOnAsKept(problem, needs, goesOn, { kept, was, today })) return goesOn;
  }
  return fit(plans, earlier);
}

/** Needs as jobs of the engine, their days that suit by the weather given. */
export function jobsOf(
  { people, tables }: WorkRequest,
  needs: readonly WorkNeed[],
  days: DaysOfWork,
  onItsDay: WorkHours['onItsDay'],
): WorkJob[] {
  const index = new Map(needs.map((need, i) => [need.key, i]));
  const { smallestPieceHours, wetDay } = tables.work;
  const { priority, animalsNeedItTimes } = tables.work.placing;
  const suitsOfAll = suitsOfNeeds(needs, days, wetDay.rainMm);
  return needs.map((need, i): WorkJob => {
    const { lostCost, lateCostPerDay } = priority.find((each) => each.id === need.priority)!;
    const times = need.animalsNeedIt ? animalsNeedItTimes : 1;
    const suits = suitsOfAll[i];
    const bound = onItsDay.get(need.key);
    return {
      id: need.key,
      minutes: Math.max(1, Math.round(need.hours * 60)),
      peopleNeeded: need.conditions.peopleNeeded ?? 1,
      able: people.flatMap((person, w) => (canDo(person, need) ? [w] : [])),
      ...smallestPiece(need, smallestPieceHours),
      fromDay: need.fromDay,
      dueDay: need.dueDay,
      untilDay: need.untilDay,
      ...(suits ? { suits } : {}),
      ...(asksOfWeather(need.conditions) ? { takesFirstDay: true as const } : {}),
      needsLight: need.conditions.daylight ?? false,
      waitsFor: need.waitsFor.map(({ key, onlyIfPlaced: _mayGo, ...wait }) => ({
        job: index.get(key)!,
        ...wait,
      })),
      // What is done the day before they come has done its work: better late than in part.
      lateCostPerDay: (need.isBeforeEvent ? 1 : times) * lateCostPerDay,
      lostCost: times * lostCost,
      ...(bound ? { pinned: [bound.piece] } : {}),
    };
  });
}

/** Whether something of the sky or the ground is asked of its day. */
function asksOfWeather(conditions: WorkConditions): boolean {
  const { peopleNeeded: _people, daylight: _light, shopsOpen: _shops, ...sky } = conditions;
  return Object.values(sky).some((each) => each !== undefined && each !== false);
}

/** Jobs as people's hours leave room for them: spells that can be finished, short work spread. */
function asHoursAllow(
  { tables }: WorkRequest,
  needs: readonly WorkNeed[],
  jobs: readonly WorkJob[],
  { workers }: WorkHours,
): WorkJob[] {
  const spread = splitWhereShort(jobs, needs, workers, tables.work.smallestPieceHours);
  return withHoursForSpells(spread, needs, workers, tables.judgements.work.hurriedShare.value);
}

/**
 * Work of one set day, and what is short in all, is done in one go or not at all. On the last of
 * several days it is still done in part.
 */
function smallestPiece(
  { canBeSpread, hours, hoursDone = 0, isOfOneDay, smallestPieceHours }: WorkNeed,
  usual: WorkTable['smallestPieceHours'],
): Pick<WorkJob, 'smallestPieceMinutes'> {
  const longerThan = smallestPieceHours ?? usual.longerThanHours;
  if (!canBeSpread || isOfOneDay || hours + hoursDone <= longerThan) return {};
  return { smallestPieceMinutes: Math.round(60 * (smallestPieceHours ?? usual.value)) };
}

function fitOrExplain<Found>(needs: readonly WorkNeed[], fit: () => Found): Found {
  try {
    return fit();
  } catch (error) {
    if (!(error instanceof RingError)) throw error;
    const names = error.ring.map((i) => needs[i]!.name);
    throw new FieldError([
      {
        field: 'ownJobs',
        code: 'not-allowed',
        given: names.join(' → '),
        fix: `These wait for each other in a circle: ${names.join(' → ')}. Take one of the waits away.`,
      },
    ]);
  }
}
