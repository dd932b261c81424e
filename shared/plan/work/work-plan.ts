import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import { RingError } from '../../schedule/activity-network.js';
import { seededRandom } from '../../schedule/random.js';
import { workNetwork } from '../../schedule/work-network.js';
import { daysLeft } from '../../schedule/work-reasons.js';
import { fitWork, type FittedWork } from '../../schedule/work-search.js';
import type { EarlierWork } from '../../schedule/work-settling.js';
import { workWindows } from '../../schedule/work-windows.js';
import { finishDay, placedMinutes, type WorkJob } from '../../schedule/work.js';
import type { WorkProblem } from '../../schedule/work.js';
import { FieldError } from '../../problems/field-problem.js';
import { workFrame, usualDays, type DaysOfWork } from './days-of-work.js';
import { groundPart, type GroundPart } from './ground-part.js';
import { hoursFrom, workBasis, type WorkBasis } from './work-basis.js';
import { workHorizonDays } from './work-horizon.js';
import { workHours, type WorkHours } from './work-hours.js';
import { arrivalsToMove } from './arrival-to-move.js';
import { careGaps, type CareGap } from './care-gaps.js';
import type { LookNeed, PlannedChore, WorkNeed } from './work-need.js';
import { workNeeds } from './work-needs.js';
import type { DoneNeed, StruckNeed } from './set-aside.js';
import { suitsOfNeeds } from './suits-of-needs.js';
import { placeKeyDates } from './place-dates.js';
import { onSuitableDays } from './chore-days.js';
import { weekStartOf } from '../../calendar/week-start.js';
import { changesSince, type WorkChange } from './work-changes.js';
import type { KeptPlan } from '../../farm/kept-plan.js';
import { goesOnAsKept } from './as-kept.js';
import { earlierPieces, keptPlan } from './kept-plan.js';
import type { Round } from '../../tables/task-template.js';
import type { KeyDate } from '../tasks/event.js';
import type { WorkRequest } from './work-request.js';
import { isWorthTelling } from './worth-telling.js';
import type { WorkTable } from '../../tables/work-table.js';
import { canDo, workPeople } from './work-people.js';
import type { WholeWork } from './whole-work.js';
import { partWords, wordsToFit, unfitWords, whyThen } from './work-words.js';

/** A piece of work on a day. */
export interface PlannedPiece {
  readonly date: string;
  readonly hours: number;
  readonly personIds: readonly string[];
}

export interface PlannedJob {
  readonly key: string;
  readonly name: string;
  readonly belongsTo?: WorkNeed['belongsTo'];
  readonly priority: WorkNeed['priority'];
  /** Of each person who takes part. */
  readonly hours: number;
  /** Hours of each that are done already and no longer counted in `hours`. */
  readonly hoursDone: number;
  /** By the table or the job, whatever was said and logged. */
  readonly reckonedHours: number;
  /** The hours were given for this piece of work itself. */
  readonly hasOwnHours?: true;
  /** How the household's own log changed those hours; left out where nothing was logged. */
  readonly learned?: WorkNeed['learned'];
  readonly kind?: string;
  /** What its hours rest on. */
  readonly hoursFrom: Sourced;
  readonly peopleNeeded: number;
  /** By the calendar alone: first and last day, and the days between. */
  readonly earliest: string;
  readonly latest: string;
  readonly calendarSpareDays: number;
  /** Days it can slip from where it is planned to its latest; of work that does not fit, none. */
  readonly spareDays: number;
  /** Its latest day lies before today. */
  readonly alreadyLate: boolean;
  /** Where it stands; none when it does not fit. */
  readonly pieces: readonly PlannedPiece[];
  /** Hours of each who takes part that nobody has on its day: it is done all the same. */
  readonly shortHours: number;
  /** Hours of each that find no place, though the rest does. */
  readonly lostHours: number;
  /** How much of it fits and why no more; only of work that is done in part. */
  readonly whyPart?: string;
  /** Days it is done after its latest. */
  readonly lateDays: number;
  /** Why it stands there, or why it does not fit. */
  readonly why: string;
  /** What would make all of it fit. */
  readonly waysToFit: readonly string[];
  readonly ifLate?: string;
}

/** Chores of a day: what, how long, who. */
export interface PlannedChoreDay {
  readonly key: string;
  readonly name: string;
  /** Batch or herd it is done for; the household's own has none. */
  readonly belongsTo?: string;
  readonly hours: number;
  /** Rounds of the day on which it is done; the household’s own has none. */
  readonly rounds?: readonly Round[];
  readonly personId?: string;
  /** Hours of it that nobody has on that day. */
  readonly shortHours: number;
}

/** Batch or herd that is looked at so often by day, from one date to another. */
export interface PlannedLook {
  readonly ofId: string;
  readonly everyH: number;
  /** So often because drinkers last no longer. */
  readonly isOfDrinkers?: true;
  readonly from: string;
  readonly to: string;
}

export interface WorkWeek {
  /** As the country counts its weeks; of the first only today and what follows counts. */
  readonly from: string;
  /** Hours people give, and what of them chores and planned work take. */
  readonly hours: number;
  readonly choreHours: number;
  readonly plannedHours: number;
  /** Work whose latest day by the calendar lies in this week. */
  readonly dueHours: number;
  readonly isOverloaded: boolean;
}

/** The household's work fitted into its hours and days. */
export interface WorkPlan {
  readonly today: string;
  readonly to: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly jobs: readonly PlannedJob[];
  /** Batches and herds whose work is missing, because no plan of theirs can be made. */
  readonly unplanned: readonly string[];
  readonly chores: readonly (readonly PlannedChoreDay[])[];
  /** Days on which animals have nobody. */
  readonly careGaps: readonly CareGap[];
  /** How often animals want somebody to look at them by day. */
  readonly looks: readonly PlannedLook[];
  /** What the work hangs on, from today to the end of the plan. */
  readonly events: readonly KeyDate[];
  readonly weeks: readonly WorkWeek[];
  readonly basis: WorkBasis;
  /** Days with no rain, and those with workable ground as well; the rest is beyond the forecast. */
  readonly weather: {
    readonly label: string;
    readonly forecastDays: number;
    /** 1 for every day that is forecast: a forecast may leave days out. */
    readonly isForecast: readonly number[];
    readonly minC: readonly number[];
    readonly maxC: readonly number[];
    readonly rainMm: readonly number[];
    readonly isWorkable: readonly number[];
  };
  readonly ground: GroundPart;
  /** Ticked off, so that it can be opened again. */
  readonly done: readonly DoneNeed[];
  /** Struck out, so that it can be taken back. */
  readonly struckOut: readonly StruckNeed[];
  /** What changed since the last plan of an earlier day; left out when there was none. */
  readonly changes?: { readonly since: string; readonly list: readonly WorkChange[] };
  /** Found when the ground was looked at today. */
  readonly groundToday?: boolean;
  /** What late and lost work costs by the priority of each, and the least it could. */
  readonly cost: number;
  readonly costAtLeast: number;
}

/** Plans to try: a few tenths of a second; fewer where an earlier plan is gone on from. */
const PLANS = 6000;
const PLANS_AGAIN = 700;

/**
 * Fits the household's work into people's hours and the days that suit it.
 *
 * @throws FieldError when own jobs wait for each other in a circle
 */
export function workPlanOf(
  given: WorkRequest,
  plans = plansFor(given),
): WorkPlan & { readonly keep: KeptPlan } {
  const { work, chores, looks, hours } = fitAll(given, plans);
  const { request, needs, problem, fitted, days } = work;
  const windows = workWindows(problem.jobs, workNetwork(problem.jobs));
  const dateOf = (day: number): string => addDays(request.today, day);
  const moves = arrivalsToMove(given, (asked) =>
    asked === given ? unfitOf(work) : unfitOf(fitAll(asked, Math.min(plans, FEW_PLANS)).work),
  );
  const moveOf = ({ key }: WorkNeed): string[] => (moves.has(key) ? [moves.get(key)!] : []);
  const jobs = needs.map((need, i): PlannedJob => {
    const pieces = fitted.plan[i]!;
    const window = windows[i]!;
    const isIn = 0 < pieces.length;
    const unplaced = isIn ? problem.jobs[i]!.minutes - placedMinutes(pieces) : 0;
    const lostMinutes = isWorthTelling(unplaced / 60) ? unplaced : 0;
    return {
      key: need.key,
      name: need.name,
      ...(need.belongsTo ? { belongsTo: need.belongsTo } : {}),
      priority: need.priority,
      hours: need.hours,
      hoursDone: need.hoursDone ?? 0,
      reckonedHours: need.reckonedHours,
      ...(need.hasOwnHours ? { hasOwnHours: true } : {}),
      ...(need.learned ? { learned: need.learned } : {}),
      ...(need.kind === undefined ? {} : { kind: need.kind }),
      hoursFrom: hoursFrom(request, need),
      peopleNeeded: problem.jobs[i]!.peopleNeeded,
      earliest: dateOf(window.earliestDay),
      latest: dateOf(window.latestDay),
      calendarSpareDays: window.spareDays,
      spareDays: isIn ? Math.max(0, window.latestDay - finishDay(pieces)) : 0,
      alreadyLate: window.latestDay < 0,
      pieces: pieces.map((piece) => ({
        date: dateOf(piece.day),
        hours: piece.minutes / 60,
        personIds: piece.workers.map((w) => request.people[w]!.id),
      })),
      shortHours: (hours.onItsDay.get(need.key)?.shortMinutes ?? 0) / 60,
      lostHours: lostMinutes / 60,
      ...(0 < lostMinutes ? { whyPart: partWords(work, i) } : {}),
      lateDays: isIn ? Math.max(0, finishDay(pieces) - window.latestDay) : 0,
      why: isIn ? whyThen(work, windows, i) : unfitWords(work, i),
      waysToFit: isIn && lostMinutes === 0 ? [] : [...wordsToFit(work, i), ...moveOf(need)],
      ...(need.ifLate === undefined ? {} : { ifLate: need.ifLate }),
    };
  });
  const look = request.groundChecks.find(({ date }) => date === request.today);
  return {
    today: request.today,
    to: dateOf(problem.days - 1),
    people: request.people.map(({ id, name }) => ({ id, name })),
    jobs: jobs.sort((a, b) => (firstDate(a) < firstDate(b) ? -1 : 1)),
    unplanned: request.unplanned,
    chores: choresOf(request, chores, hours),
    careGaps: careGaps({ request, chores, looks, hours }),
    looks: looks.map(({ of, everyH, fromDay, toDay, isOfDrinkers }) => ({
      ...{ ofId: of.id, everyH, ...(isOfDrinkers ? { isOfDrinkers } : {}) },
      ...{ from: dateOf(fromDay), to: dateOf(toDay) },
    })),
    events: eventsOf(request, dateOf(problem.days - 1)),
    weeks: weeksOf(request, work, windows, hours),
    basis: workBasis(request, needs, chores),
    weather: {
      label: request.climate.label,
      forecastDays: days.isForecast.reduce((sum, day) => sum + day, 0),
      isForecast: [...days.isForecast],
      minC: Array.from(days.minC, tenth),
      maxC: Array.from(days.maxC, tenth),
      rainMm: Array.from(days.rainMm, tenth),
      isWorkable: [...days.isWorkable],
    },
    ground: groundPart(work),
    done: work.done,
    struckOut: work.struckOut,
    ...(request.before
      ? {
          changes: {
            since: request.before.plannedOn,
            list: changesSince(request.before, work, windows),
          },
        }
      : {}),
    ...(look ? { groundToday: look.isWorkable } : {}),
    cost: fitted.cost,
    costAtLeast: fitted.bound,
    keep: keptPlan(
      request,
      needs,
      { problem, plan: fitted.plan },
      windows.map(({ latestDay }) => latestDay),
    ),
  };
}

/** Plans tried for a question beside the plan itself. */
const FEW_PLANS = 1000;

/** Work that has no place in a plan, or not the whole of it. */
const unfitOf = ({ needs, problem, fitted }: WholeWork): WorkNeed[] =>
  needs.filter(
    (_, i) => !problem.jobs[i]!.pinned && placedMinutes(fitted.plan[i]!) < problem.jobs[i]!.minutes,
  );

const tenth = (value: number): number => Math.round(value * 10) / 10;

const eventsOf = (request: WorkRequest, to: string): KeyDate[] =>
  [...request.work.flatMap(({ events }) => events), ...placeKeyDates(request)]
    .filter(({ date }) => request.today <= date && date <= to)
    .sort((a, b) => (a.date < b.date ? -1 : 1));

const firstDate = (job: PlannedJob): string => job.pieces[0]?.date ?? job.latest;

const plansFor = ({ kept }: WorkRequest): number => (kept ? PLANS_AGAIN : PLANS);

/** The problem of the work, solved: for the plan and for what looks further. */
export function fitAll(
  given: WorkRequest,
  plans = plansFor(given),
): {
  work: WholeWork;
  chores: readonly PlannedChore[];
  looks: readonly LookNeed[];
  hours: WorkHours;
} {
  const request = { ...given, people: workPeople(given.people, given.handovers) };
  const horizon = workHorizonDays(request);
  const frame = workFrame(request, horizon);
  const days = usualDays(frame);
  const asked = workNeeds(request, horizon);
  const { needs, done, struckOut } = asked;
  const chores = onSuitableDays(asked.chores, days, request.tables.work.wetDay.rainMm);
  const hours = workHours(request, { ...asked, chores }, horizon);
  const problem: WorkProblem = {
    days: horizon,
    workers: hours.workers,
    jobs: jobsOf(request, needs, days, hours.onItsDay),
  };
  const fitted = fitOrExplain(needs, () => fitOn(request, needs, problem, plans));
  const left = daysLeft(problem, fitted.plan);
  const { dryEnough } = frame;
  return {
    work: { request, days, dryEnough, needs, problem, fitted, left, done, struckOut },
    chores,
    looks: asked.looks,
    hours,
  };
}

/** Fits the work in; where a day has gone by as it was planned, the plan only goes on. */
function fitOn(
  { kept, seed, tables, today, ...rest }: WorkRequest,
  needs: readonly WorkNeed[],
  problem: WorkProblem,
  plans: number,
): FittedWork {
  const fit = (tries: number, earlier?: EarlierWork): FittedWork =>
    fitWork(problem, { plans: tries }, seededRandom(seed), earlier);
  if (!kept) return fit(plans);
  const was = earlierPieces({ today, people: rest.people }, needs, kept);
  const { madeFor } = kept;
  const earlier = {
    plan: was,
    costPerMove: tables.work.placing.moveCost,
    ...(madeFor === undefined ? {} : { madeFor }),
  };
  if (kept.plannedOn < today) {
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
  const { priority } = tables.work.placing;
  const suitsOfAll = suitsOfNeeds(needs, days, wetDay.rainMm);
  return needs.map((need, i): WorkJob => {
    const { lostCost, lateCostPerDay } = priority.find((each) => each.id === need.priority)!;
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
      needsLight: need.conditions.daylight ?? false,
      waitsFor: need.waitsFor.map((wait) => ({ job: index.get(wait.key)!, days: wait.days })),
      lateCostPerDay,
      lostCost,
      ...(bound ? { pinned: [bound.piece] } : {}),
    };
  });
}

/** Work of one set day, and what is short in all, is done in one go or not at all. */
function smallestPiece(
  { canBeSpread, hours, hoursDone = 0, fromDay, untilDay, smallestPieceHours }: WorkNeed,
  usual: WorkTable['smallestPieceHours'],
): Pick<WorkJob, 'smallestPieceMinutes'> {
  const longerThan = smallestPieceHours ?? usual.longerThanHours;
  if (!canBeSpread || fromDay === untilDay || hours + hoursDone <= longerThan) return {};
  return { smallestPieceMinutes: Math.round(60 * (smallestPieceHours ?? usual.value)) };
}

function fitOrExplain(needs: readonly WorkNeed[], fit: () => FittedWork): FittedWork {
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

function choresOf(
  { people }: WorkRequest,
  chores: readonly PlannedChore[],
  { choreDays }: WorkHours,
): PlannedChoreDay[][] {
  const byKey = new Map(chores.map((chore) => [chore.key, chore]));
  return choreDays.map((list) =>
    list.map(({ key, minutes, person, shortMinutes }) => ({
      key,
      name: byKey.get(key)!.name,
      ...ofChore(byKey.get(key)!),
      hours: minutes / 60,
      shortHours: shortMinutes / 60,
      ...(person === undefined ? {} : { personId: people[person]!.id }),
    })),
  );
}

const ofChore = ({ belongsTo, rounds }: PlannedChore) => ({
  ...(belongsTo ? { belongsTo: belongsTo.name } : {}),
  ...(rounds ? { rounds } : {}),
});

function weeksOf(
  { today, people, farm }: WorkRequest,
  { problem, fitted }: WholeWork,
  windows: readonly { readonly latestDay: number }[],
  { given, choreDays }: WorkHours,
): WorkWeek[] {
  const first = weekStartOf(today, farm);
  const gone = daysBetween(first, today);
  const weekOf = (day: number): number => Math.floor((gone + day) / 7);
  const weeks = weekOf(problem.days - 1) + 1;
  const sums = Array.from({ length: weeks }, () => ({ given: 0, chores: 0, planned: 0, due: 0 }));
  given
    .filter((_, w) => !people[w]!.isChild)
    .forEach((minutes) => minutes.forEach((m, day) => (sums[weekOf(day)]!.given += m)));
  choreDays.forEach((list, day) =>
    list.forEach(({ minutes, person, shortMinutes }) => {
      const sum = sums[weekOf(day)]!;
      sum.chores += minutes;
      // Of a child's hours those count that it is given a chore in.
      if (person !== undefined && people[person]!.isChild) sum.given += minutes - shortMinutes;
    }),
  );
  problem.jobs.forEach((job, i) => {
    const latest = Math.max(0, windows[i]!.latestDay);
    if (latest < problem.days) sums[weekOf(latest)]!.due += job.minutes * job.peopleNeeded;
    for (const piece of fitted.plan[i]!)
      sums[weekOf(piece.day)]!.planned += piece.minutes * job.peopleNeeded;
  });
  return sums.map((sum, week) => ({
    from: addDays(first, 7 * week),
    hours: sum.given / 60,
    choreHours: sum.chores / 60,
    plannedHours: sum.planned / 60,
    dueHours: sum.due / 60,
    isOverloaded: sum.given < sum.chores + sum.due,
  }));
}
