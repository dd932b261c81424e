import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { fromFarm, from, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { MOST_OF_NAMES } from '../../farm/words.js';
import { listed } from '../../units/listed.js';
import type { Herd } from '../../farm/herd.js';
import { movesKey } from '../../farm/herd-move-work.js';
import { isAtHome, isGrownUp } from '../../farm/who-is-there.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Round } from '../../tables/task-template.js';
import type { Tables } from '../../tables/tables.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { formatHours } from '../../units/format.js';
import { type HerdGoes } from '../pasture/move-told.js';
import { dayPiece, type DayPiece } from '../work/day-piece.js';
import { isGoneBy } from '../work/gone-by.js';
import { goesByChore } from '../work/herd-goes.js';
import { hoursOn, workPeople } from '../work/work-people.js';
import { isWorthTelling } from '../work/worth-telling.js';
import { PRIORITY_RANK } from '../work/priority-rank.js';
import type { PlannedJob, WorkPlan } from '../work/planned-work.js';
import { mayNeedDryGround } from './ground-work.js';
import { todayFormulas } from './today-formulas.js';

/** Work of today: to do, due without any hours, or ticked off today. */
export interface TodayJob {
  readonly key: string;
  readonly name: string;
  /** Batch or herd it is for. */
  readonly of?: string;
  readonly people: readonly string[];
  /** Who did it; of open work whom it was laid for. */
  readonly doneBy?: string;
  readonly peopleNeeded: number;
  /** Of each who takes part, today. */
  readonly hours: number;
  /** Of each on all its days, where it takes more than today. */
  readonly hoursInAll?: number;
  /** Hours of each that were done before. */
  readonly hoursDone?: number;
  /** Of the hours of work that is done, those of days before. */
  readonly hoursEarlier?: number;
  /** Why it stands on this day, and the end of it that says by when. */
  readonly why?: string;
  readonly dueWords?: string;
  readonly ifLate?: string;
  /** The last day on which it is in time. */
  readonly latest?: PlainDate;
  /** Who else has that many hours left today. */
  readonly others?: readonly string[];
  /** What is bought on it: told when it is ticked off. */
  readonly buys?: PlannedJob['buys'];
  /** It is due, and has no place in the plan of today. */
  readonly hasNoHours?: boolean;
  /** Its last day, where that is over: nobody ticked it, and it is asked after with the others. */
  readonly overSince?: PlainDate;
  /** What of today's weather or ground is against it, where it is that and not the time. */
  readonly unfitToday?: string;
  /** The ground is too wet, as found or reckoned, and it sounds like work in the soil that was not told to wait. */
  readonly isOnWetGround?: true;
  /** Hours of it that nobody has. */
  readonly shortHours?: number;
  /** Animals cannot do without it, or not without it today. */
  readonly forAnimals?: true;
  /** To do, done today, or no longer for today: put off, or the rest of it. */
  readonly state: 'open' | 'done' | 'later';
  /** When the rest of it is planned. */
  readonly restOn?: PlainDate;
}

/** A chore of the round. */
export interface TodayChore {
  readonly key: string;
  readonly name: string;
  /** Batch or herd it is for; the household's own has none. */
  readonly of?: string;
  readonly hours: number;
  readonly rounds?: readonly Round[];
  /** Of each animal, where it comes when one does and its hours are those of an average day. */
  readonly hoursEach?: number;
  readonly person?: string;
  /** Who of the grown-ups at home could, where nobody has the hours for it. */
  readonly anyOf?: string;
  /** Who did it, where it was told done. */
  readonly doneBy?: string;
  /** The paddock it brings the herd to, which its tick tells. */
  readonly goes?: HerdGoes & { readonly paddock: string };
  /** A move that was told today already: it is asked no more, unless it was its own tick that told it. */
  readonly isTold?: true;
}

export interface TodayHours {
  readonly had: NumberQuantity;
  readonly used: NumberQuantity;
  /** Of them, what was not ticked off yet: the round counts whole. */
  readonly left?: number;
  /** Those whose part of the round takes nothing of them. */
  readonly notCounted?: readonly string[];
}

/** Chores of today by batch and herd. */
export function todayChores(
  plan: WorkPlan,
  { herds, paddocks, people, handovers }: FarmPicture,
  pasture: PasturePlan | undefined,
): TodayChore[] {
  const order = herds.map(({ name }: Herd) => name);
  // Animals wait for nobody's hours: somebody who is there does it all the same.
  const home = people
    .filter((each) => isGrownUp(each) && isAtHome(each, plan.today, handovers))
    .map(({ name }) => name);
  const whoCan: Pick<TodayChore, 'person' | 'anyOf'> =
    home.length === 0
      ? {}
      : home.length === 1
        ? { person: home[0]! }
        : { anyOf: listed(home, 'or') };
  const goesBy = (key: string): Pick<TodayChore, 'goes'> => {
    const goes = goesByChore({ key, on: plan.today }, herds, pasture);
    const paddock = paddocks.find(({ id }) => id === goes?.paddockId)?.name;
    return goes && paddock !== undefined ? { goes: { ...goes, paddock } } : {};
  };
  return (plan.chores[0] ?? [])
    .map((chore): TodayChore => ({
      key: chore.key,
      name: chore.name,
      ...(chore.belongsTo === undefined ? {} : { of: chore.belongsTo }),
      hours: chore.hours,
      ...(chore.rounds === undefined ? {} : { rounds: chore.rounds }),
      ...(chore.hoursEach === undefined ? {} : { hoursEach: chore.hoursEach }),
      ...(chore.personId === undefined ? whoCan : { person: nameOf(plan, chore.personId) }),
      ...goesBy(chore.key),
      ...(isMoveTold(chore.key, { herds, pasture, today: plan.today }) ? { isTold: true } : {}),
    }))
    .sort((a, b) => placeIn(order, a) - placeIn(order, b));
}

/** Whether it was told today that a herd came onto the grass that a chore brings it to. */
function isMoveTold(
  key: string,
  {
    herds,
    pasture,
    today,
  }: {
    readonly herds: readonly Herd[];
    readonly pasture: PasturePlan | undefined;
    readonly today: PlainDate;
  },
): boolean {
  const herd = herds.find(({ id }) => movesKey(id) === key);
  if (!herd?.inPaddockId || herd.inSince !== today) return false;
  const move = pasture?.moves.find(({ herdId, from }) => herdId === herd.id && from === today);
  return move?.paddockId === herd.inPaddockId;
}

const placeIn = (order: readonly string[], { of = '' }: TodayChore): number => order.indexOf(of);

/** Hours that people have left today besides their round and what is planned for them. */
export type FreeHours = readonly {
  readonly id: string;
  readonly name: string;
  readonly hours: number;
}[];

/** Hours that adults of the household have left today, as planned. */
export function freeToday(
  { people, handovers, today }: Pick<FarmPicture, 'people' | 'handovers' | 'today'>,
  tables: Tables,
  plan: WorkPlan,
): FreeHours {
  const ofRound = plan.chores[0] ?? [];
  // Nobody says who did what is ticked off: it is nobody's free time.
  const done = plan.done
    .filter(({ on }) => on === today)
    .map(({ hours, hoursEarlier = 0 }) => ({ hours: Math.max(0, hours - hoursEarlier) }));
  const pieces = plan.jobs.flatMap((job) => job.pieces.filter(({ date }) => date === today));
  return workPeople(people, handovers)
    .filter(({ isChild }) => !isChild)
    .map((person) => {
      const { id, name } = person;
      const round = ofRound.filter(({ personId }) => personId === id);
      const own = pieces.filter(({ personIds }) => personIds.includes(id));
      const used = [...round, ...own, ...done].reduce((sum, { hours }) => sum + hours, 0);
      return { id, name, hours: hoursOn(person, today, { handovers, tables }) - used };
    });
}

/**
 * Work planned for today, what is due without hours, and what was ticked off or put off today.
 *
 * @param asked keys of work whose day is past and that is for today, whatever day it is laid on
 */
export function todayJobs(
  plan: WorkPlan,
  { progress }: Pick<FarmPicture, 'progress'>,
  {
    free = [],
    asked = new Set(),
  }: { readonly free?: FreeHours; readonly asked?: ReadonlySet<string> } = {},
): TodayJob[] {
  const { today } = plan;
  const marks = new Map(progress.map((mark) => [mark.key, mark]));
  const tomorrow = addDays(today, 1);
  // What animals cannot do without another day stands above all other work.
  const urgency = ({ animalsNeedIt, latest }: PlannedJob): number =>
    animalsNeedIt !== true ? 2 : latest <= today ? 0 : 1;
  const jobs = [
    ...plan.jobs
      .filter((job) => urgency(job) === 0 || 0 < job.pieces.length)
      .sort((a, b) => urgency(a) - urgency(b)),
    ...plan.jobs.filter((job) => 0 < urgency(job) && job.pieces.length === 0).sort(byWhatMatters),
  ];
  const open = jobs.flatMap((job): TodayJob[] => {
    const piece = dayPiece(job, today);
    if (!piece && marks.get(job.key)?.notBefore === tomorrow) return [laterJob(plan, job)];
    const isDue = asked.has(job.key) || (job.pieces.length === 0 && job.latest <= today);
    if (!piece && !isDue) return [];
    const others = othersFor(job, piece, free);
    return [{ ...openJob(plan, job, piece), ...(0 < others.length ? { others } : {}) }];
  });
  const done = plan.done
    .filter(({ on }) => on === today)
    .map(({ key, name, of, hours, hoursEarlier, peopleNeeded, doneBy }): TodayJob => ({
      ...{ key, name, peopleNeeded, hours, people: [], state: 'done' },
      ...(hoursEarlier === undefined ? {} : { hoursEarlier }),
      ...(doneBy === undefined ? {} : { doneBy }),
      ...(of === undefined ? {} : { of }),
    }));
  // What nobody has the time for stands below what is planned, and what is over below both.
  const isOver = ({ overSince }: TodayJob): boolean => overSince !== undefined;
  return [
    ...open.filter(isPlanned),
    ...open.filter((job) => !isPlanned(job) && !isOver(job)),
    ...open.filter(isOver),
    ...done,
  ];
}

/** Of much that is late, what matters most, and then what is late since yesterday and not since spring. */
const byWhatMatters = (a: PlannedJob, b: PlannedJob): number =>
  PRIORITY_RANK[a.priority] - PRIORITY_RANK[b.priority] || b.latest.localeCompare(a.latest);
const isPlanned = ({ hasNoHours }: TodayJob): boolean => !hasNoHours;

const laterJob = (plan: WorkPlan, job: PlannedJob): TodayJob => ({
  ...openJob(plan, job, undefined),
  state: 'later',
  ...(job.pieces[0] ? { restOn: job.pieces[0].date } : {}),
});

function openJob(plan: WorkPlan, job: PlannedJob, piece: DayPiece | undefined): TodayJob {
  const { key, name, belongsTo, hours, pieces, hoursDone, why, ifLate, shortHours } = job;
  return {
    ...{ key, name, peopleNeeded: job.peopleNeeded, state: 'open' },
    ...(belongsTo ? { of: belongsTo.name } : {}),
    people: peopleOf(plan, piece),
    ...laidFor(plan, piece),
    hours: piece?.hours ?? hours,
    ...((1 < pieces.length && pieces.some(({ date }) => date !== plan.today)) ||
    (piece && isWorthTelling(hours - piece.hours))
      ? { hoursInAll: hours }
      : {}),
    ...(0 < hoursDone ? { hoursDone } : {}),
    ...(job.animalsNeedIt || (belongsTo && job.latest <= plan.today) ? { forAnimals: true } : {}),
    ...{ why, dueWords: lastWords(why) },
    ...(ifLate === undefined ? {} : { ifLate, latest: job.latest }),
    ...(job.buys === undefined ? {} : { buys: job.buys }),
    ...(piece || 0 < pieces.length ? {} : { hasNoHours: true }),
    ...(isGoneBy(job) ? { overSince: job.latest } : {}),
    ...(piece || job.unfitToday === undefined ? {} : { unfitToday: job.unfitToday }),
    ...(plan.weather.isWorkable[0] === 0 && mayNeedDryGround(job) ? { isOnWetGround: true } : {}),
    ...(0 < shortHours ? { shortHours } : {}),
  };
}

/** By name, whoever has it in the plan of the day. */
function laidFor(plan: WorkPlan, piece: DayPiece | undefined): Pick<TodayJob, 'doneBy'> {
  const doneBy = listed((piece?.personIds ?? []).map((id) => nameOf(plan, id)));
  return doneBy === '' || MOST_OF_NAMES < doneBy.length ? {} : { doneBy };
}

/** Who is at it; where each has a piece, with their hours. */
const peopleOf = (plan: WorkPlan, piece: DayPiece | undefined): string[] =>
  piece?.each
    ? piece.each.flatMap(({ personIds, hours }) =>
        personIds.map((id) => `${nameOf(plan, id)} ${formatHours(hours)}`),
      )
    : (piece?.personIds ?? []).map((id) => nameOf(plan, id));

/** Who else could do it today, by their hours; own work says itself who can. */
const othersFor = (
  { belongsTo, hours }: PlannedJob,
  piece: DayPiece | undefined,
  free: FreeHours,
): string[] =>
  belongsTo === undefined
    ? []
    : free
        .filter((person) => !piece?.personIds.includes(person.id))
        .filter((person) => (piece?.hours ?? hours) <= person.hours)
        .map(({ name }) => name);

/**
 * Reasons are told one after the other, by when it is due the last of them. A name between quotes is
 * whole: “Health work before turnout: vaccines; tags” is one.
 */
const lastWords = (why: string): string =>
  why
    .split(/; (?![^“”]*”)/)
    .at(-1)!
    .replace(/\.$/, '');

const nameOf = ({ people }: WorkPlan, id: string): string =>
  people.find((person) => person.id === id)?.name ?? id;

/** Hours of those who are there and do the work today, and what chores and work take of them. */
export function todayHours(
  picture: FarmPicture,
  tables: Tables,
  { chores, jobs }: { chores: readonly TodayChore[]; jobs: readonly TodayJob[] },
): TodayHours {
  const { people, handovers, today } = picture;
  // Who only looks in does what names them, and is no hand of the day.
  const hands = workPeople(people, handovers).filter(({ looksIn }) => looksIn === undefined);
  // Children help, and do no work alone: of a farm that names nobody else theirs are all there are.
  const adults = hands.filter(({ isChild }) => !isChild);
  const each = (0 < adults.length ? adults : hands).map((person) => ({
    name: person.name,
    hours: hoursOn(person, today, { handovers, tables }),
  }));
  const had = each.reduce((sum, { hours }) => sum + hours, 0);
  // What is laid for children alone takes nothing of the hours of adults.
  const apart = new Set(
    hands.filter((one) => !each.some(({ name }) => name === one.name)).map(({ name }) => name),
  );
  const ofChores = chores
    .filter(({ person = '' }) => !apart.has(person))
    .reduce((sum, { hours }) => sum + hours, 0);
  const counted = jobs
    .filter(({ hasNoHours, state }) => !hasNoHours && state !== 'later')
    .filter(({ people: who }) => who.length === 0 || who.some((name) => !apart.has(name)));
  const hoursOf = (of: readonly TodayJob[]): number =>
    of.reduce(
      (sum, { hours, hoursEarlier = 0, peopleNeeded }) =>
        sum + Math.max(0, hours - hoursEarlier) * peopleNeeded,
      0,
    );
  const ofJobs = hoursOf(counted);
  const isUsual = people.some(({ hoursByWeekday }) => hoursByWeekday === undefined);
  const rows = isUsual ? [tables.work.hoursByWeekday] : [];
  const here = each.filter(({ hours }) => 0 < hours);
  const chore = quantity('Chores', ofChores, 'h', todayFormulas.hoursUsed, []);
  return {
    had: quantity(
      'Hours available today',
      had,
      'h',
      todayFormulas.hoursHad,
      here.map(({ name, hours }) =>
        isUsual ? input(name, hours, 'h') : fromFarm(name, hours, 'h'),
      ),
      { rows },
    ),
    used: quantity('Work today', ofChores + ofJobs, 'h', todayFormulas.hoursUsed, [
      from(chore, 'h_chore'),
      input('Work', ofJobs, 'h', 'h_work'),
    ]),
    left: ofChores + hoursOf(counted.filter(({ state }) => state === 'open')),
    ...(0 < apart.size ? { notCounted: [...apart] } : {}),
  };
}
