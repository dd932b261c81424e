import { addDays, datesFrom, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { isGrownUp } from '../../farm/who-is-there.js';
import { formatClock, formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import type { LookNeed, PlannedChore } from './work-need.js';
import type { ChoreDay } from './hands-on-day.js';
import type { WorkHours } from './work-hours.js';
import { outOn, type Out } from '../out-by-day.js';
import { isThere, type WorkPerson } from './work-people.js';
import type { WorkRequest } from './work-request.js';

/** Days on which animals have nobody: said before anything else of a plan. */
export interface CareGap {
  readonly kind: 'nobody-there' | 'out-by-day' | 'no-hours';
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** Days between the two on which it is so. */
  readonly days: number;
  /** Batches and herds that wait, or chores of no animal. */
  readonly of: readonly string[];
  readonly said: string;
  /** What would mend it, a sentence each. */
  readonly ways: readonly string[];
}

interface Cared {
  readonly request: WorkRequest & { readonly people: readonly WorkPerson[] };
  readonly chores: readonly PlannedChore[];
  readonly looks: readonly LookNeed[];
  readonly hours: Pick<WorkHours, 'choreDays'>;
}

/**
 * Days on which nobody is there for the animals, on which nobody has hours for their chores, and on
 * which everybody is out for longer than they may be left, the worst first.
 */
export function careGaps(cared: Cared): CareGap[] {
  const { request, hours } = cared;
  const dates = datesFrom(request.today, hours.choreDays.length);
  const adults = request.people.filter(({ isChild }) => !isChild);
  const there = dates.map((date) => adults.filter((person) => isThere(person, date, request)));
  if (adults.length === 0) return [];
  return [
    ...nobodyThere(cared, dates, there),
    ...outByDay(cared, dates, there),
    ...noHours(cared, dates, there),
  ];
}

/** Runs of days, those that lie close together as one. */
function runsOf(days: readonly number[], apart = 1): number[][] {
  const runs: number[][] = [];
  for (const day of days) {
    const last = runs.at(-1);
    if (last && day - last.at(-1)! <= apart) last.push(day);
    else runs.push([day]);
  }
  return runs;
}

const spanOf = (run: readonly number[], dates: readonly PlainDate[]) => ({
  from: dates[run[0]!]!,
  to: dates[run.at(-1)!]!,
  days: run.length,
});

/** Everybody is away, and animals are there. */
function nobodyThere(
  { request, chores, hours }: Cared,
  dates: readonly PlainDate[],
  there: readonly (readonly WorkPerson[])[],
): CareGap[] {
  const names = new Map(chores.map((chore) => [chore.key, waiting(chore)]));
  const open = dates.flatMap((_, day) =>
    there[day]!.length === 0 && 0 < hours.choreDays[day]!.length ? [day] : [],
  );
  return runsOf(open).map((run): CareGap => {
    const span = spanOf(run, dates);
    const of = [
      ...new Set(run.flatMap((day) => hours.choreDays[day]!.map(({ key }) => names.get(key)!))),
    ];
    return {
      ...{ kind: 'nobody-there', ...span, of },
      said: `Nobody is there ${onDays(span, request)} for feed, water and a look: ${listed(of)}.`,
      ways: [...stays(request, dates, run), ...laterArrival(request, span, of)],
    };
  });
}

/** Those of the household who are away on all of these days: each alone would be enough. */
function stays(
  { people }: Cared['request'],
  dates: readonly PlainDate[],
  run: readonly number[],
): string[] {
  const names = people
    .filter((person) => isGrownUp(person) && 0 < person.away.length)
    .filter(({ away }) =>
      run.every((day) => away.some(({ from, to }) => from <= dates[day]! && dates[day]! <= to)),
    )
    .map(({ name }) => name);
  return [
    'Put somebody in charge: a neighbor or a farm sitter, under While you’re away.',
    ...(names.length === 0 ? [] : [`${listed(names, 'or')} stays.`]),
  ];
}

/** A batch that is not there yet and would be alone: it comes when somebody is back. */
function laterArrival(
  { work, today, farm }: Cared['request'],
  { from, to }: Pick<CareGap, 'from' | 'to'>,
  of: readonly string[],
): string[] {
  const reader = { units: farm.units, today };
  return work
    .filter(({ kind, name }) => kind === 'batch' && of.includes(name))
    .flatMap(({ id, name, events }) => {
      const arrival = events.find((event) => event.id === `event/${id}/arrival`)?.date;
      if (arrival === undefined || arrival <= today || arrival < addDays(from, -14)) return [];
      const others = of.filter((each) => each !== name);
      const left = others.length === 0 ? '' : ` That leaves ${listed(others)}.`;
      return [
        `${name}: an arrival after ${formatDate(to, reader)} instead of ${formatDate(arrival, reader)}.${left}`,
      ];
    });
}

/** Signs by which a cow is watched closely: Kansas State University, calving management tips. */
const NEAR = 'once a cow is near (bag filling, loose under the tail, mucus)';
/** Common practice, no source. */
const UNTIL_NEAR = 'Until one is, look before work, after work and last thing at night.';

/**
 * Who of the household can stay at home on days on which all are out: by turns where two are there;
 * where only one is, that one, and who is away.
 */
function stayWords(
  request: Cared['request'],
  dates: readonly PlainDate[],
  there: readonly (readonly WorkPerson[])[],
  run: readonly number[],
  isOfCalving: boolean,
): string {
  const adults = request.people.filter(
    (person: WorkPerson) => isGrownUp(person) && person.comesInFor === undefined,
  );
  const homeOn = (day: number): WorkPerson[] => adults.filter((each) => there[day]!.includes(each));
  const single = run.filter((day) => homeOn(day).length === 1);
  const on = isOfCalving ? NEAR : run.length === 1 ? 'that day' : 'on those days';
  if (single.length === 0)
    return `Somebody stays at home ${on}${run.length === 1 ? '' : ', by turns'}.`;
  const stay = [...new Set(single.flatMap((day) => homeOn(day).map(({ name }) => name)))];
  const away = adults.filter((each) => single.some((day) => !there[day]!.includes(each)));
  const who = listed(stay, 'or');
  if (away.length === 0) return `${who} stays at home ${on}.`;
  const names = listed(away.map(({ name }) => name));
  const why = `${names} ${away.length === 1 ? 'is' : 'are'} away ${onDays(spanOf(single, dates), request)}`;
  if (run.length === single.length && stay.length === 1)
    return `${who} stays at home ${on}: ${why}.`;
  const turns = run.length === single.length ? '' : ', by turns where two are there';
  return `Somebody stays at home ${on}${turns}: ${why}, and only ${who} is there then.`;
}

/** Everybody who is there is out by day, for longer than the animals may be left. */
function outByDay(
  { request, looks }: Cared,
  dates: readonly PlainDate[],
  there: readonly (readonly WorkPerson[])[],
): CareGap[] {
  const out = dates.map((date, day) => longestOut(request, there[day]!, date));
  const kindOf = ({ of, isOfDrinkers, isOfCalving }: LookNeed): string =>
    [of.id, isOfDrinkers, isOfCalving].join(' ');
  const kinds = new Map(looks.map((look) => [kindOf(look), look]));
  const gaps = [...kinds.values()].flatMap((kind) => {
    const { isOfDrinkers, isOfCalving = false } = kind;
    const own = looks.filter((look) => kindOf(look) === kindOf(kind));
    const everyH = dates.map((_, day) => lookEveryH(own, day));
    const open = dates.flatMap((_, day) => (everyH[day]! < (out[day]?.hours ?? 0) ? [day] : []));
    const isVisited = (day: number): boolean => out[day]!.out === undefined;
    // A weekend between two weeks of work is no end of them.
    const runs = [open.filter(isVisited), open.filter((day) => !isVisited(day))];
    return runs
      .flatMap((days) => runsOf(days, 3))
      .map((run): AloneByDay => {
        const span = spanOf(run, dates);
        const [first, last] = [everyH[run[0]!]!, everyH[run.at(-1)!]!];
        const lasts = `drinkers hold ${formatHours(Math.min(first, last))} of water on a hot day`;
        const often = `every ${formatHours(first)} by day${first === last ? '' : `, later every ${formatHours(last)}`}`;
        const gap = out[run[0]!]!;
        const looksBetween = gap.out ? Math.ceil((gap.out.toH - gap.out.fromH) / first) - 1 : 0;
        const times = timesWord(looksBetween);
        return {
          ...{ ...span, name: own[0]!.of.name },
          what: `${isOfDrinkers ? lasts : `somebody looks ${often}`}. ${capital(onDays(span, request))} ${outText(gap, request)}.`,
          ways: gap.out
            ? [
                ...(isOfDrinkers ? [MORE_WATER] : []),
                stayWords(request, dates, there, run, isOfCalving),
                ...(isOfCalving ? [UNTIL_NEAR] : []),
                ...(first < last ? [dayOffWords(span, request)] : []),
                `A neighbor looks in ${times} in between: add them to the people of the farm, with how often.`,
              ]
            : [`Ask whoever comes in to look ${often}.`],
        };
      });
  });
  return togetherSaid(gaps);
}

/** Those just come ask for most: the day is taken off from work, which wants to be asked for. */
const dayOffWords = ({ from }: Pick<CareGap, 'from'>, { farm, today }: WorkRequest): string =>
  `At the least on ${formatDate(from, { units: farm.units, today })}, when they want a look most often: ask for that day off in good time, or for coming home at noon.`;

/** Animals that are alone for longer than they may be on some days. */
interface AloneByDay extends Pick<CareGap, 'from' | 'to' | 'days' | 'ways'> {
  readonly name: string;
  readonly what: string;
}

/** Those of whom the same is to be said, in one sentence. */
function togetherSaid(gaps: readonly AloneByDay[]): CareGap[] {
  const same = new Map<string, AloneByDay[]>();
  for (const gap of gaps) {
    const key = [gap.from, gap.to, gap.what, ...gap.ways].join('\n');
    same.set(key, [...(same.get(key) ?? []), gap]);
  }
  return [...same.values()].map((all) => {
    const { name: _name, what, ...gap } = all[0]!;
    const of = all.map(({ name }) => name);
    return { kind: 'out-by-day', ...gap, of, said: `${listed(of)}: ${what}` };
  });
}

const timesWord = (times: number): string =>
  times < 3 ? ['', 'once', 'twice'][times]! : `${times} times`;

const MORE_WATER = 'Set out more drinkers, or larger ones, for the hot weeks.';

/** The shortest time between two looks that animals ask for on a day; Infinity where none does. */
const lookEveryH = (looks: readonly LookNeed[], day: number): number =>
  looks.reduce(
    (least, { everyH, fromDay, toDay }) =>
      fromDay <= day && day <= toDay ? Math.min(least, everyH) : least,
    Infinity,
  );

function outText({ out }: { readonly out?: Out }, { farm }: WorkRequest): string {
  if (!out) return 'somebody only comes in';
  return `nobody is in the house from ${formatClock(out.fromH, farm)} to ${formatClock(out.toH, farm)}`;
}

/** The hours in a row by day without anybody in the house; undefined where somebody is there. */
function longestOut(
  { tables }: Cared['request'],
  there: readonly WorkPerson[],
  date: PlainDate,
): { readonly hours: number; readonly out?: Out } | undefined {
  const looks = there.reduce((sum, { looksIn = 0 }) => sum + looksIn, 0);
  const home = there.filter(
    ({ comesInFor, looksIn }) => comesInFor === undefined && looksIn === undefined,
  );
  if (home.length === 0) {
    if (there.length === 0) return undefined;
    const isSitter = there.some(({ comesInFor }) => comesInFor !== undefined);
    const times = looks + (isSitter ? 24 / tables.work.visits.everyH : 0);
    return { hours: 24 / times };
  }
  const outs = home.map((person) => outOn(person, date, tables));
  if (outs.some((out) => out === undefined)) return undefined;
  const fromH = Math.max(...outs.map((out) => out!.fromH));
  const toH = Math.min(...outs.map((out) => out!.toH));
  return fromH < toH ? { hours: (toH - fromH) / (looks + 1), out: { fromH, toH } } : undefined;
}

/** Chores of a day take more than anybody who is there has. */
function noHours(
  { request, chores, hours }: Cared,
  dates: readonly PlainDate[],
  there: readonly (readonly WorkPerson[])[],
): CareGap[] {
  const names = new Map(chores.map((chore) => [chore.key, waiting(chore)]));
  const short = hours.choreDays.map((list, day) =>
    there[day]!.length === 0 ? [] : list.filter(({ shortMinutes }) => 0 < shortMinutes),
  );
  const open = dates.flatMap((_, day) => (short[day]!.length === 0 ? [] : [day]));
  return runsOf(open, 7).map((run): CareGap => {
    const span = spanOf(run, dates);
    const of = [...new Set(run.flatMap((day) => short[day]!.map(({ key }) => names.get(key)!)))];
    const mostOf = (minutesOf: (chore: ChoreDay) => number): number =>
      Math.max(...run.map((day) => short[day]!.reduce((sum, each) => sum + minutesOf(each), 0)));
    const most = mostOf(({ shortMinutes }) => shortMinutes);
    // One person does a chore: a helper does the whole of those that nobody has enough time for.
    const whole = mostOf(({ minutes }) => minutes);
    const upTo = span.days === 1 ? '' : 'up to ';
    return {
      ...{ kind: 'no-hours', ...span, of },
      said: `Chores of ${listed(of)} take ${upTo}${formatHours(most / 60)} more than anyone has ${onDays(span, request)}.`,
      ways: [
        `${span.days === 1 ? '' : 'On those days, '}${formatHours(most / 60)} more from somebody, or a helper for ${formatHours(whole / 60)}.`,
      ],
    };
  });
}

const waiting = ({ belongsTo, name }: PlannedChore): string => belongsTo?.name ?? `“${name}”`;

/** “on Wed, Apr 21”, “from … to …”, “on 6 of the days from … to …”. */
function onDays(
  { from, to, days }: Pick<CareGap, 'from' | 'to' | 'days'>,
  { farm, today }: WorkRequest,
): string {
  const reader = { units: farm.units, today };
  if (from === to) return `on ${formatDate(from, reader)}`;
  const span = `from ${formatDate(from, reader)} to ${formatDate(to, reader)}`;
  return daysBetween(from, to) + 1 === days ? span : `on ${days} of the days ${span}`;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
