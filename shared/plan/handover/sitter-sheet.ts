import { datesFrom, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Person } from '../../farm/farm.js';
import type { Handover, Whereabout, PhoneNumber } from '../../farm/handover.js';
import type { PlannedChoreDay, PlannedJob, WorkPlan } from '../work/planned-work.js';
import type { OwnJob } from '../../farm/job.js';
import type { Round } from '../../tables/task-template.js';
import { formatHours } from '../../units/format.js';
import { hoursOn, isCaretaker, workPeople, type Dated } from '../work/work-people.js';
import { notReady } from '../work/not-ready.js';
import { roundsSaid } from '../work/rounds-said.js';
import { isFrost } from '../../farm/heat-caution.js';
import { hasHives } from '../work/of-place.js';
import { hasSeedlings, troublesOf, visitsOf } from './sheet-extras.js';
import type { SheetStop } from './sheet-stops.js';

/** A chore or piece of work of one day, as the sitter reads it. */
export interface SheetJob {
  readonly key: string;
  readonly name: string;
  readonly of?: string;
  readonly hours: number;
  /** Rounds of the day on which it is done. */
  readonly rounds?: readonly Round[];
  readonly hoursEach?: number;
  /** Days it is done after its latest. */
  readonly lateDays?: number;
  readonly why?: string;
  readonly ifLate?: string;
}

export interface SheetPage {
  readonly date: PlainDate;
  readonly weather: { readonly isForecast: boolean; readonly rainMm: number };
  readonly stops: readonly SheetStop[];
  /** When somebody has to be there. */
  readonly visits: readonly Round[];
  readonly chores: readonly SheetJob[];
  /** Chores of those who stay, so that nobody does them twice. */
  readonly others: readonly (SheetJob & { readonly who: string })[];
  readonly jobs: readonly SheetJob[];
  /** Who else of the household is at home that day, and who is away. */
  readonly home: readonly string[];
  readonly away: readonly string[];
  /** Work due by this day for which no hours are left anywhere. */
  readonly noHours: readonly SheetJob[];
  /** Hours of all that is on the page, and those the sitter has. */
  readonly hours: number;
  readonly hoursAvailable: number;
  readonly isTooMuch: boolean;
}

/** Work that is done late, and not on a page of the sheet. */
export interface SheetLate {
  readonly key: string;
  readonly name: string;
  readonly of?: string;
  readonly latest: PlainDate;
  readonly doneOn: PlainDate;
  readonly ifLate?: string;
}

/** All that a sitter needs, a page a day. */
export interface SitterSheet {
  readonly sitter: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly pages: readonly SheetPage[];
  /** Work of these days that may be left until after them, and its latest day. */
  readonly canWait: readonly { readonly name: string; readonly latest: PlainDate }[];
  /** Animals that come or go out in these days, and not all is ready or nobody has the hours. */
  readonly tooSoon: readonly {
    readonly name: string;
    readonly on: PlainDate;
    readonly said: string;
  }[];
  /** Work due by the end of these days that is done after them, and what that endangers. */
  readonly late: readonly SheetLate[];
  /** Work that fits nowhere because of these days. */
  readonly fitsNowhere: readonly { readonly name: string; readonly why: string }[];
  /** What to do first where something is wrong, and what else lives there. */
  readonly troubles: readonly string[];
  readonly phones: readonly PhoneNumber[];
  readonly whereabouts: readonly Whereabout[];
  readonly notes?: string;
  readonly cautions: readonly string[];
}

/** Whom to call, a line each; what is missing is said, as it is looked for when it is late. */
export function phoneLines(phones: readonly PhoneNumber[], between = ' '): string[] {
  const given = phones.filter(({ who, number }) => who.trim() !== '' || number.trim() !== '');
  if (given.length === 0) return ['no phone number is given: write down the vet’s and your own'];
  return given.map(
    ({ who, number }) =>
      `${who.trim() || 'name missing'}${between}${number.trim() || '(number missing)'}`,
  );
}

const VET = /vet/i;
const NEIGHBOR = /neighbou?r/i;

/** Whose number is to be written on the printed sheet by hand: no number of theirs is known. */
export function phonesToWrite(phones: readonly PhoneNumber[]): string[] {
  const named = phones.map(({ who }) => who.trim());
  const isNamed = (is: (who: string) => boolean): boolean => named.some(is);
  return [
    ...phones
      .filter(({ who, number }) => who.trim() !== '' && number.trim() === '')
      .map(({ who }) => who.trim()),
    // Any other name is taken for one of the household.
    ...(isNamed((who) => who !== '' && !VET.test(who) && !NEIGHBOR.test(who))
      ? []
      : ['The household']),
    ...(isNamed((who) => VET.test(who)) ? [] : ['The vet']),
    ...(isNamed((who) => NEIGHBOR.test(who)) ? [] : ['A neighbor']),
  ];
}

/** Whom a sheet is for. */
export const sitterName = (name: string | undefined): string => name?.trim() || 'name missing';

const MOST_THAT_WAITS = 10;

/**
 * The sheet of a hand-over: its days of a plan in which only the sitter has hours.
 *
 * @param stopsOn batches and herds that are there on a date
 * @param people everybody of the farm
 */
export function sitterSheet(
  handover: Handover,
  plan: WorkPlan,
  stopsOn: (date: PlainDate) => readonly SheetStop[],
  {
    people: household,
    jobs = [],
    tables,
  }: {
    readonly people: readonly Person[];
    /** Jobs of the household's own. */
    readonly jobs?: readonly OwnJob[];
    readonly tables: Dated['tables'];
  },
): SitterSheet {
  const { from, to, roundOrder, phones, whereabouts: left, notes } = handover;
  const dates = datesFrom(from, daysBetween(from, to) + 1);
  const person = handover.personId ?? `sitter-${handover.id}`;
  const [inCharge] = workPeople(household, [handover]).filter((each) =>
    isCaretaker(each, handover),
  );
  const hoursOf = (date: PlainDate): number =>
    inCharge ? hoursOn(inCharge, date, { handovers: [handover], tables }) : 0;
  const pages = dates.map((date) =>
    pageOf(
      { handover, person, plan, household, hoursAvailable: hoursOf(date) },
      date,
      inOrder(inFrost(withLooks(stopsOn(date), plan, date), { plan, tables }, date), roundOrder),
    ),
  );
  const isWithin = ({ date }: { date: PlainDate }): boolean => from <= date && date <= to;
  const open = plan.jobs.filter((job) => !job.pieces.some(isWithin));
  return {
    sitter: sitterName(plan.people.find(({ id }) => id === person)?.name ?? handover.sitter),
    from,
    to,
    pages,
    canWait: open
      .filter((job) => job.earliest <= to && to < job.latest && 0 < job.pieces.length)
      .filter((job) => to < job.pieces[0]!.date)
      .sort((a, b) => (a.latest < b.latest ? -1 : 1))
      .slice(0, MOST_THAT_WAITS)
      .map(({ name, latest }) => ({ name, latest })),
    tooSoon: tooSoonIn(plan, isWithin),
    late: open
      .filter(
        ({ lateDays, pieces, latest }) => 0 < lateDays && latest <= to && to < pieces[0]!.date,
      )
      .sort((a, b) => (a.latest < b.latest ? -1 : 1))
      .slice(0, MOST_THAT_WAITS)
      .map(({ key, name, belongsTo, latest, pieces, ifLate }) => ({
        ...{ key, name, latest, doneOn: pieces.at(-1)!.date },
        ...(belongsTo ? { of: belongsTo.name } : {}),
        ...(ifLate === undefined ? {} : { ifLate }),
      })),
    fitsNowhere: open
      .filter((job) => job.pieces.length === 0 && job.earliest <= to && from <= job.latest)
      .map(({ name, why }) => ({ name, why })),
    troubles: troublesOf(
      pages.flatMap(({ stops }) => stops),
      {
        seedlings: dates.some((date) => hasSeedlings(jobs, plan, date)),
        hives: hasHives(jobs),
      },
    ).map((each) =>
      // When to call is said once for all who read it.
      each === 'calving' ? tables.cautions.calving!.text : tables.work.inTrouble[each],
    ),
    phones,
    whereabouts: left,
    ...(notes === undefined ? {} : { notes }),
    cautions: [...new Set(pages.flatMap(({ stops }) => stops.flatMap((stop) => stop.cautions)))],
  };
}

/** Events of the days that come before all is ready, or for whose own work nobody has the hours. */
function tooSoonIn(
  { eventsToMove, events, jobs }: WorkPlan,
  isWithin: (of: { date: PlainDate }) => boolean,
): SitterSheet['tooSoon'] {
  const isSaid = new Set(eventsToMove.map(({ id }) => id));
  const unready = eventsToMove.map((event) => ({
    ...{ name: event.name, on: event.from },
    said: [notReady(event), event.said].filter((each) => each !== undefined).join('. '),
  }));
  const short = events.flatMap(({ id, name, date }) => {
    const job = jobs.find(({ later }) => later && id === `event/${later.ofId}/${later.kind}`);
    return job && !isSaid.has(id) ? [{ name, on: date, said: job.waysToFit.join(' Or: ') }] : [];
  });
  return [...unready, ...short].filter(({ on }) => isWithin({ date: on }));
}

/** How often somebody looks at animals on a day, at least; Infinity where nothing says. */
const lookedAtEveryH = (id: string, { looks }: Pick<WorkPlan, 'looks'>, date: PlainDate): number =>
  looks
    // How long the drinkers last is said with them.
    .filter((look) => look.isOfDrinkers === undefined)
    .filter(({ ofId, from, to }) => ofId === id && from <= date && date <= to)
    .reduce((least, look) => Math.min(least, look.everyH), Infinity);

/** Stops with how often somebody looks at the animals at least. */
const withLooks = (
  stops: readonly SheetStop[],
  plan: Pick<WorkPlan, 'looks'>,
  date: PlainDate,
): SheetStop[] =>
  stops.map((stop) => {
    const everyH = lookedAtEveryH(stop.id, plan, date);
    return everyH === Infinity ? stop : { ...stop, actions: [lookSaid(everyH), ...stop.actions] };
  });

/** Stops with what to mind of cattle where the night freezes, by the forecast or as is usual. */
function inFrost(
  stops: readonly SheetStop[],
  { plan, tables }: { readonly plan: WorkPlan } & Pick<Dated, 'tables'>,
  date: PlainDate,
): readonly SheetStop[] {
  const { cattleInFrost } = tables.work.lookFor;
  if (!isFrost(plan.weather.minC[daysBetween(plan.today, date)])) return stops;
  return stops.map((stop) =>
    stop.isHerd
      ? {
          ...stop,
          lookFor: [...stop.lookFor, ...cattleInFrost],
          cautions: [...stop.cautions, 'cattle-ice'],
        }
      : stop,
  );
}

function lookSaid(everyH: number): string {
  if (24 <= everyH) return 'Somebody looks at them once a day at least.';
  if (12 <= everyH) return 'Somebody looks at them morning and evening at least.';
  return `By day somebody looks at them every ${formatHours(everyH)}, and late in the evening.`;
}

function pageOf(
  {
    handover,
    person,
    plan,
    household,
    hoursAvailable,
  }: {
    handover: Handover;
    person: string;
    plan: WorkPlan;
    household: readonly Person[];
    hoursAvailable: number;
  },
  date: PlainDate,
  stops: readonly SheetStop[],
): SheetPage {
  const day = daysBetween(plan.today, date);
  const all = plan.chores[day] ?? [];
  // What nobody has the time for is on the sheet as well: animals wait for it.
  const chores = all
    .filter(({ personId }) => personId === undefined || personId === person)
    .map(choreLine);
  const jobs = plan.jobs.flatMap((job): SheetJob[] =>
    job.pieces
      .filter((piece) => piece.date === date && piece.personIds.includes(person))
      .map((piece) => ({ ...jobLine(job), hours: piece.hours })),
  );
  const hours = [...chores, ...jobs].reduce((sum, each) => sum + each.hours, 0);
  return {
    date,
    weather: {
      isForecast: plan.weather.isForecast[day] === 1,
      rainMm: plan.weather.rainMm[day] ?? 0,
    },
    stops,
    visits: visitsOf(chores, Math.min(...stops.map(({ id }) => lookedAtEveryH(id, plan, date)))),
    chores,
    others: all
      .filter(({ personId }) => personId !== undefined && personId !== person)
      .map((chore) => ({ ...choreLine(chore), who: nameOf(plan, chore.personId) })),
    jobs,
    ...whoIsThere(handover, household, date),
    noHours: plan.jobs
      .filter(({ pieces, latest }) => pieces.length === 0 && latest === date)
      .map(jobLine),
    hours,
    hoursAvailable,
    isTooMuch: hoursAvailable + 1 / 60 < hours,
  };
}

/** The household without whoever is in charge, parted into those at home and those away. */
function whoIsThere(
  { personId, awayIds }: Handover,
  household: readonly Person[],
  date: PlainDate,
): Pick<SheetPage, 'home' | 'away'> {
  const others = household.filter(({ id }) => id !== personId);
  const isAway = ({ id, away }: Person): boolean =>
    (awayIds?.includes(id) ?? true) || away.some(({ from, to }) => from <= date && date <= to);
  const names = (people: readonly Person[]): string[] => people.map(({ name }) => name);
  return {
    home: names(others.filter((person) => !isAway(person))),
    away: names(others.filter(isAway)),
  };
}

/** “At home: Adult 2. Away: Adult 1.” */
export const whoIsThereText = ({ home, away }: Pick<SheetPage, 'home' | 'away'>): string =>
  [
    0 < home.length ? `At home: ${home.join(', ')}.` : 'Nobody else is at home.',
    ...(0 < away.length ? [`Away: ${away.join(', ')}.`] : []),
  ].join(' ');

/** “Come morning, noon and evening.”; nothing where no round is asked for. */
export const visitLine = ({ visits }: Pick<SheetPage, 'visits'>): string[] =>
  visits.length === 0 ? [] : [`Come ${roundsSaid(visits)}.`];

const choreLine = ({
  key,
  name,
  belongsTo,
  hours,
  rounds,
  hoursEach,
}: PlannedChoreDay): SheetJob => ({
  ...{ key, name, hours },
  ...(hoursEach === undefined ? {} : { hoursEach }),
  ...(rounds === undefined ? {} : { rounds }),
  ...(belongsTo === undefined ? {} : { of: belongsTo }),
});

const nameOf = ({ people }: WorkPlan, of: string | undefined): string =>
  people.find(({ id }) => id === of)?.name ?? '';

const jobLine = ({ key, name, belongsTo, why, ifLate, hours, lateDays }: PlannedJob): SheetJob => ({
  key,
  name,
  hours,
  why,
  ...(belongsTo ? { of: belongsTo.name } : {}),
  ...(0 < lateDays ? { lateDays } : {}),
  ...(ifLate === undefined ? {} : { ifLate }),
});

/** Stops as one walks past them; those that are not named come last, as they were. */
function inOrder(stops: readonly SheetStop[], order: readonly string[]): SheetStop[] {
  const place = (stop: SheetStop): number => {
    const at = order.indexOf(stop.id);
    return at < 0 ? order.length : at;
  };
  return [...stops].sort((a, b) => place(a) - place(b));
}
