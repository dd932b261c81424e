import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { workNetwork } from '../../schedule/work-network.js';
import { workWindows } from '../../schedule/work-windows.js';
import { finishDay, placedMinutes } from '../../schedule/work.js';
import type { KeptPlan } from '../../farm/kept-plan.js';
import type { KeyDate } from '../tasks/event.js';
import { ARRANGING } from '../past-tasks.js';
import { careGaps } from './care-gaps.js';
import { eventsToMove } from './event-to-move.js';
import { fitAll, hoursOfDays } from './fitted-work.js';
import { groundPart } from './ground-part.js';
import { keptPlan } from './kept-plan.js';
import { laterForHours, type LaterForHours } from './later-for-hours.js';
import { placeKeyDates } from './place-dates.js';
import type { PlannedChoreDay, PlannedJob, WorkPlan } from './planned-work.js';
import type { WholeWork } from './whole-work.js';
import { hoursFrom, workBasis } from './work-basis.js';
import { changesSince } from './work-changes.js';
import { groundUnfit, unfitDay } from './days-that-suit.js';
import type { WorkHours } from './work-hours.js';
import type { PlannedChore, WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';
import { stayWords, withLongerDays } from './stays-longer.js';
import { shortDays } from './short-days.js';
import { daysWithoutHands } from './without-hands.js';
import { outOnceReady } from './out-once-ready.js';
import { weeksOf } from './work-weeks.js';
import { wordsInTime, wordsToFit } from './words-to-fit.js';
import { notDoneBefore, partWords, unfitWords, whyThen } from './work-words.js';
import { isWorthTelling } from './worth-telling.js';

/**
 * Fits the household's work into people's hours and the days that suit it.
 *
 * @throws FieldError when own jobs wait for each other in a circle
 */
export function workPlanOf(
  asGiven: WorkRequest,
  plans?: number,
): WorkPlan & { readonly keep: KeptPlan } {
  const tries = Math.min(plans ?? FEW_PLANS, FEW_PLANS);
  const { request: given, put } = outOnceReady(
    asGiven,
    (asked) => fitAll(asked, tries, { hasAnimalsFirst: false }).work,
  );
  const { work: found, chores, looks, hours } = fitAll(given, plans);
  const { request, needs, days } = found;
  const windows = workWindows(found.problem.jobs, workNetwork(found.problem.jobs));
  const { stayH } = request.tables.judgements.work;
  const { work, minutes: longer } = withLongerDays(found, windows, 60 * stayH.value);
  const { problem, fitted } = work;
  const dateOf = (day: number): string => addDays(request.today, day);
  const from = new Map(needs.map(({ key }, i) => [key, found.fitted.plan[i]!]));
  const toMove = [
    ...put,
    ...eventsToMove(
      given,
      (asked) =>
        asked === given
          ? unfitOf(found)
          : unfitOf(fitAll(asked, tries, { hasAnimalsFirst: false, from }).work),
      { put, begins: beginsOf(found) },
    ),
  ];
  const moveOf = ({ key }: WorkNeed): string[] =>
    toMove.flatMap(({ keys, said }) => (keys.includes(key) ? [said] : []));
  const shortHoursOf = (key: string): number => (hours.onItsDay.get(key)?.shortMinutes ?? 0) / 60;
  const nobodyFor = new Set(
    needs.flatMap(({ key, fromDay, untilDay }, i) =>
      fromDay === untilDay && fitted.plan[i]!.length === 0 ? [key] : [],
    ),
  );
  const later = laterForHours(
    given,
    (key) => nobodyFor.has(key) || isWorthTelling(shortHoursOf(key)),
    hoursOfDays,
  );
  const laterSaid = ({ key }: WorkNeed): string[] =>
    later.flatMap(({ keys, said }) => (keys.includes(key) ? [said] : []));
  const jobs = needs.map((need, i): PlannedJob => {
    const pieces = fitted.plan[i]!;
    const window = windows[i]!;
    const isIn = 0 < pieces.length;
    const staysMinutes = longer.get(i) ?? 0;
    const unplaced = isIn ? problem.jobs[i]!.minutes - placedMinutes(pieces) : 0;
    const after = notDoneBefore(work, i).flatMap(({ name, isLater }) => (isLater ? [name] : []));
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
      ...(need.animalsNeedIt ? { animalsNeedIt: true } : {}),
      ...(need.kind === `batch/${ARRANGING}` ? { isForWantOfHands: true } : {}),
      hoursFrom: hoursFrom(request, need),
      peopleNeeded: problem.jobs[i]!.peopleNeeded,
      earliest: dateOf(window.earliestDay),
      latest: dateOf(window.latestDay),
      calendarSpareDays: window.spareDays,
      spareDays: isIn ? Math.max(0, window.latestDay - finishDay(pieces)) : 0,
      alreadyLate: window.latestDay < 0,
      pieces: pieces.map((piece) => ({
        date: dateOf(piece.day),
        hours: (piece.minutes + (piece === pieces.at(-1) ? staysMinutes : 0)) / 60,
        personIds: piece.workers.map((w) => request.people[w]!.id),
      })),
      shortHours: shortHoursOf(need.key),
      ...laterOf(later, need),
      ...(0 < staysMinutes ? { longerHours: staysMinutes / 60 } : {}),
      lostHours: lostMinutes / 60,
      ...(0 < lostMinutes ? { whyPart: partWords(work, i) } : {}),
      lateDays: isIn ? Math.max(0, finishDay(pieces) - window.latestDay) : 0,
      ...(0 < after.length ? { beforeItsTurn: after } : {}),
      why: isIn ? `${whyThen(work, windows, i)}${stayWords(work, i, longer)}` : unfitWords(work, i),
      waysToFit:
        0 < lostMinutes || !isIn
          ? [...wordsToFit(work, i), ...moveOf(need), ...laterSaid(need)]
          : window.latestDay < finishDay(pieces)
            ? [...wordsInTime(work, i, window.latestDay), ...moveOf(need)]
            : laterSaid(need),
      ...(need.ifLate === undefined ? {} : { ifLate: need.ifLate }),
      ...(need.buys === undefined ? {} : { buys: need.buys }),
      ...weatherOfToday(work, need),
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
    eventsToMove: toMove,
    careGaps: careGaps({ request, chores, looks, hours }),
    shortDays: [...shortDays(request, hours), ...daysWithoutHands(request, needs)].sort((a, b) =>
      a.date < b.date ? -1 : a.date > b.date ? 1 : 0,
    ),
    looks: looks.map(({ of, everyH, fromDay, toDay, isOfDrinkers }) => ({
      ...{ ofId: of.id, everyH, ...(isOfDrinkers ? { isOfDrinkers } : {}) },
      ...{ from: dateOf(fromDay), to: dateOf(Math.min(toDay, problem.days - 1)) },
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
            list: changesSince(request.before, found, windows),
          },
        }
      : {}),
    ...(look ? { groundToday: look.isWorkable } : {}),
    cost: fitted.cost,
    costAtLeast: fitted.bound,
    keep: keptPlan(
      request,
      needs,
      { problem: found.problem, plan: found.fitted.plan },
      windows.map(({ latestDay }) => latestDay),
    ),
  };
}

/** The later day of a move or a turn-out that has the hours for work of it. */
const laterOf = (later: readonly LaterForHours[], { key }: WorkNeed): Pick<PlannedJob, 'later'> => {
  const found = later.find(({ keys }) => keys.includes(key));
  if (!found) return {};
  const { kind, ofId, to } = found;
  return { later: { kind, ofId, to } };
};

/** Plans tried for a question beside the plan itself. */
const FEW_PLANS = 200;

/**
 * Work that has no place in a plan, not the whole of it, or none before the day of what it makes ready
 * for, where that can wait: nobody mends a fence while the cattle go out.
 */
const unfitOf = ({ needs, problem, fitted, request }: WholeWork): WorkNeed[] =>
  needs.filter(({ prepares }, i) => {
    const pieces = fitted.plan[i]!;
    const { pinned, minutes } = problem.jobs[i]!;
    if (!pinned && placedMinutes(pieces) < minutes) return true;
    if (prepares?.kind !== 'turn-out') return false;
    return daysBetween(request.today, prepares.date) <= finishDay(pieces);
  });

/** The day on which work begins what should go on for some weeks, by its key. */
const beginsOf =
  ({ needs, fitted }: WholeWork) =>
  (key: string): number | undefined => {
    const pieces = fitted.plan[needs.findIndex((need) => need.key === key)] ?? [];
    return 0 < pieces.length ? finishDay(pieces) : undefined;
  };

const tenth = (value: number): number => Math.round(value * 10) / 10;

const eventsOf = (request: WorkRequest, to: string): KeyDate[] =>
  [...request.work.flatMap(({ events }) => events), ...placeKeyDates(request)]
    .filter(({ date }) => request.today <= date && date <= to)
    .sort((a, b) => (a.date < b.date ? -1 : 1));

const firstDate = (job: PlannedJob): string => job.pieces[0]?.date ?? job.latest;

function choresOf(
  { people }: WorkRequest,
  chores: readonly PlannedChore[],
  { choreDays }: WorkHours,
): PlannedChoreDay[][] {
  const byKey = new Map(chores.map((chore) => [chore.key, chore]));
  return choreDays.map((list, day) =>
    list.map(({ key, minutes, person, shortMinutes }) => {
      const { name, nameOn, belongsTo, rounds, hoursEach } = byKey.get(key)!;
      // There are thousands: put together field by field they take a third of what spread ones do.
      const chore: Writable<PlannedChoreDay> = { key, name: nameOn?.get(day) ?? name };
      if (belongsTo) chore.belongsTo = belongsTo.name;
      if (rounds) chore.rounds = rounds;
      if (hoursEach !== undefined) chore.hoursEach = hoursEach;
      chore.hours = minutes / 60;
      chore.shortHours = shortMinutes / 60;
      if (person !== undefined) chore.personId = people[person]!.id;
      return chore as PlannedChoreDay;
    }),
  );
}

type Writable<T> = { -readonly [Field in keyof T]?: T[Field] };

/**
 * What a piece of work asks of the ground, and what of today is against it: its ground, and its
 * weather where that is forecast.
 */
function weatherOfToday({ request, days }: WholeWork, { conditions, isInSoil }: WorkNeed) {
  const asksDryGround = conditions.dryGround === true;
  const isTooWet = asksDryGround && days.isWorkable[0] === 0;
  const unfitToday = isTooWet
    ? groundUnfit(days, 0)
    : days.isForecast[0] === 1
      ? unfitDay(conditions, days, 0, request.tables.work.wetDay.rainMm)
      : undefined;
  return {
    ...(asksDryGround ? { asksDryGround } : {}),
    ...(isInSoil === undefined ? {} : { isInSoil }),
    ...(unfitToday === undefined ? {} : { unfitToday }),
  };
}
