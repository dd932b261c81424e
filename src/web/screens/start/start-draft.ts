import {
  addDays,
  datesFrom,
  daysBetween,
  plainDateAt,
  type PlainDate,
} from '../../../../shared/calendar/plain-date.js';
import type { Farm } from '../../../../shared/farm/farm.js';
import type { Point, PossibleCountry } from '../../../../shared/farm/place.js';
import type { ChildAge, FreeTime, Start } from '../../../../shared/farm/start.js';
import { browserUnits } from '../../api/browser-units.js';
import { serviceNowMs } from '../../kept/clock.js';

/** Where the farm lies, as it was found. */
export interface FoundPlace extends Pick<
  Start,
  'latitudeDeg' | 'longitudeDeg' | 'units' | 'currency' | 'country' | 'region'
> {
  /** What it is called, if anything. */
  readonly name?: string;
  /** The place as one line. */
  readonly said: string;
  readonly timeZone: string;
  /** Taken for the farm until its own height is said. */
  readonly townElevationM?: number | undefined;
  /** The town whose height that is, where a spot was given and not the town. */
  readonly heightOf?: Pick<Point, 'near' | 'nearKm'>;
  /** Countries it may be in, where a border is near, and the one that was chosen by name. */
  readonly countries?: readonly PossibleCountry[];
  readonly chosenCountry?: string;
}

export interface AwayDraft {
  readonly person: number;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** A month by its first day, and a day of it where one is known. */
export interface WhenDraft {
  readonly month: string;
  readonly day?: string | undefined;
}

export interface MeatDraft {
  readonly birds?: number | undefined;
  readonly when?: WhenDraft | undefined;
}

export interface CattleDraft {
  readonly head?: number | undefined;
  readonly classId: string;
  readonly when?: WhenDraft | undefined;
  readonly due?: WhenDraft | undefined;
  /** The last month of a calving season, by its first day. */
  readonly dueUntil?: string | undefined;
}

type OwnClimate = Partial<
  Pick<Farm, 'monthlyMinC' | 'monthlyMaxC' | 'monthlyRainMm' | 'lastFrost' | 'firstFrost'>
>;

/** All that is typed and chosen before the first plan; undefined is what nobody said. */
export interface StartDraft {
  readonly isOnline: boolean;
  readonly place?: FoundPlace | undefined;
  readonly elevationM?: number | undefined;
  readonly isConfirmed: boolean;
  readonly climate?: OwnClimate | undefined;
  readonly adults: number;
  readonly children: number;
  readonly ages: readonly (ChildAge | undefined)[];
  readonly free: readonly (FreeTime | undefined)[];
  readonly away: readonly AwayDraft[];
  readonly meat?: number | undefined;
  readonly meatWhen?: WhenDraft | undefined;
  /** Batches of meat birds after the first. */
  readonly moreMeat: readonly MeatDraft[];
  readonly layers?: number | undefined;
  readonly layersWhen?: WhenDraft | undefined;
  readonly layersAreHere?: boolean | undefined;
  /** Weeks old when they come; undefined for chicks. */
  readonly layersWeeks?: number | undefined;
  /** Kinds of cattle; the first line is there before anything is typed into it. */
  readonly cattle: readonly CattleDraft[];
  readonly paddocks?: number | undefined;
  /** Of each, or of all together: what was typed last. */
  readonly paddockM2?: number | undefined;
  readonly grassM2?: number | undefined;
  readonly makesHay?: boolean | undefined;
  readonly hasGarden?: boolean | undefined;
  readonly hives?: number | undefined;
}

export const COWS: CattleDraft = { classId: 'cow-calf' };

export const EMPTY_START: StartDraft = {
  isOnline: false,
  isConfirmed: false,
  adults: 2,
  children: 0,
  ages: [],
  free: [],
  away: [],
  moreMeat: [],
  cattle: [COWS],
};

/** The units of the place, or those of whoever sits here. */
export const unitsOf = ({ place }: StartDraft): Farm['units'] => place?.units ?? browserUnits();

const nextMonth = (month: string): string => `${addDays(month, 31).slice(0, 7)}-01`;

/** Days of a month that are still to come, by their dates. */
export function daysIn(month: string, timeZone: string | undefined): string[] {
  const today = todayIn(timeZone);
  return datesFrom(month, daysBetween(month, nextMonth(month))).filter((date) => today <= date);
}

export const todayIn = (timeZone: string | undefined): string =>
  plainDateAt(serviceNowMs(), timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone);

/** The month it is and the eleven after it, by their first days. */
export function monthsAhead(timeZone: string | undefined): string[] {
  const months = [`${todayIn(timeZone).slice(0, 7)}-01`];
  while (months.length < 12) months.push(nextMonth(months.at(-1)!));
  return months;
}

/** What is wrong with days away: an absence without its end would be left out. */
export function wrongWithAway(
  { from, to }: AwayDraft,
  today: PlainDate,
): 'swapped' | 'no-from' | 'no-to' | 'over' | undefined {
  if (from === undefined) return to === undefined ? undefined : 'no-from';
  if (to === undefined) return 'no-to';
  if (to < from) return 'swapped';
  return to < today ? 'over' : undefined;
}

/** What is sent, or undefined while the place is not known. */
export function startOf(draft: StartDraft): Start | undefined {
  const { place, climate } = draft;
  if (place === undefined) return undefined;
  const { said: _said, countries: _open, chosenCountry: _chosen, name, ...found } = place;
  const { townElevationM: _townM, heightOf: _ofTown, ...where } = found;
  return {
    ...where,
    ...(name === undefined ? {} : { place: name }),
    ...given('elevationM', draft.elevationM),
    ...(climate === undefined ? {} : { climate: climate as NonNullable<Start['climate']> }),
    ...(draft.isConfirmed ? { hasConfirmedClimate: true } : {}),
    weatherFetch: draft.isOnline,
    people: peopleOf(draft),
    ...birdsOf('meat', draft.meat, draft.meatWhen),
    ...moreMeatOf(draft.moreMeat),
    ...(draft.layersAreHere
      ? birdsOf('layers', draft.layers, undefined, { areHere: true })
      : birdsOf(
          'layers',
          draft.layers,
          draft.layersWhen,
          given('startedWeeks', draft.layersWeeks),
        )),
    ...cattleOf(draft.cattle, todayIn(place.timeZone)),
    ...(draft.hasGarden ? { hasGarden: true } : {}),
    ...(draft.hives ? { hives: draft.hives } : {}),
    ...paddocksOf(draft),
    ...given('makesHay', draft.makesHay),
  };
}

const given = <Name extends string, T>(name: Name, value: T | undefined) =>
  (value === undefined ? {} : { [name]: value }) as { [K in Name]?: T };

/** A month is one in which the best week is looked for; a day is that day. */
const spanOf = (when?: WhenDraft) => ({
  ...given('from', when?.day ?? when?.month),
  ...given('to', when?.day),
});

const birdsOf = (kind: 'meat' | 'layers', birds?: number, when?: WhenDraft, more = {}) =>
  birds ? { [kind]: { birds, ...spanOf(when), ...more } } : {};

function moreMeatOf(batches: StartDraft['moreMeat']): Pick<Start, 'moreMeat'> {
  const moreMeat = batches.flatMap(({ birds, when }) =>
    birds ? [{ birds, ...spanOf(when) }] : [],
  );
  return moreMeat.length === 0 ? {} : { moreMeat };
}

/** The months that a calving season may end in: the one it begins in, and two more. */
export function lastMonths(first: string): string[] {
  const next = nextMonth(first);
  return [first, next, nextMonth(next)];
}

/** A season lasts from its first month to the end of its last; one of a single month is its middle. */
function calvingOf({ head = 0, due, dueUntil }: CattleDraft, today: PlainDate) {
  if (due === undefined) return {};
  const isSeason = 1 < head && dueUntil !== undefined && due.month < dueUntil;
  // A day is asked of one cow alone: chosen for her, it is not that of the others.
  const day = head === 1 ? due.day : undefined;
  if (!isSeason) return { calvesOn: day ?? middleOf(due.month) };
  return {
    calvesOn: due.month < today ? today : due.month,
    calvesUntil: addDays(nextMonth(dueUntil), -1),
  };
}

/** Calves of a month come all through it. */
function middleOf(month: string): string {
  const middle = `${month.slice(0, 8)}15`;
  return middle < month ? month : middle;
}

function cattleOf(cattle: StartDraft['cattle'], today: PlainDate): Pick<Start, 'cattle'> {
  const kinds = cattle.flatMap((each) => {
    const { head, classId, when } = each;
    if (!head) return [];
    const arrives = given('arrivesOn', when?.day ?? when?.month);
    return [{ classId, head, ...arrives, ...calvingOf(each, today) }];
  });
  return kinds.length === 0 ? {} : { cattle: kinds };
}

function paddocksOf({ paddocks, paddockM2, grassM2 }: StartDraft): Pick<Start, 'paddocks'> {
  const said = {
    ...given('count', paddocks),
    ...given('areaM2', paddockM2),
    ...given('allM2', grassM2),
  };
  return Object.keys(said).length === 0 ? {} : { paddocks: said };
}

function peopleOf({ adults, children, ages, free, away }: StartDraft): Start['people'] {
  return Array.from({ length: adults + children }, (_, k) => ({
    ...(k < adults
      ? given('free', free[k])
      : { isChild: true, ...given('childAge', ages[k - adults]) }),
    away: away.flatMap(({ person, from, to }) =>
      person === k && from !== undefined && to !== undefined ? [{ from, to }] : [],
    ),
  }));
}
