import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Grazing, HerdPlace } from '../../farm/herd-places.js';
import type { Herd } from '../../farm/herd.js';
import type { AnimalPicture } from '../../farm/picture.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { FieldError } from '../../problems/field-problem.js';
import { silentDays } from '../../pasture/silent-days.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { listed } from '../../units/listed.js';
import type { Move } from './moves.js';

/** A move that nobody told, taken to have been made as it was planned. */
export interface AssumedMove {
  readonly herdId: string;
  /** Left out where they came off grass. */
  readonly paddockId?: string;
  readonly on: PlainDate;
  /** The day until which is told where they were. */
  readonly knownUntil: PlainDate;
}

/** A herd of which nothing was told for long, and that cannot be where it was planned to be by now. */
export interface UnplacedHerd {
  readonly herdId: string;
  /** Where it would be, and the herd that is there. */
  readonly paddockId: string;
  readonly heldBy: string;
  readonly knownUntil: PlainDate;
}

/** Moves that are planned in a picture, taken as it was told. */
type Planned = (picture: AnimalPicture) => readonly Move[];

/** What is assumed of herds of which nothing was told today. */
interface Assumed {
  /** The picture with their moves as if told, the one that is asked for today among them. */
  readonly picture: AnimalPicture;
  /** Moves before today. */
  readonly assumed: readonly AssumedMove[];
  readonly unplaced: readonly UnplacedHerd[];
}

/**
 * A picture in which herds have moved as they were planned to on the last day of which something was
 * told of any of them: what was asked for yesterday is what is assumed today. Taking them to stand
 * would let the plan wait for grass that they have eaten, rest paddocks that they are in, and
 * move its dates on every day on which nobody ticks.
 *
 * A herd that would then stand where another one is stays where it was told to be, and is asked about.
 */
export function withMovesAssumed(
  picture: AnimalPicture,
  tables: Tables,
  planned: Planned,
): Assumed {
  const since = new Map(
    picture.herds.flatMap((herd): [string, PlainDate][] => {
      const day = silentSince(picture, tables, herd);
      return day === undefined ? [] : [[herd.id, day]];
    }),
  );
  const days = [...new Set(since.values())].sort();
  const moves = new Map<string, AssumedMove[]>();
  const unplaced = new Map<string, UnplacedHerd>();
  const told = new Map(picture.herds.map((herd) => [herd.id, herd]));
  let now = picture;
  days.forEach((day, k) => {
    const next = days[k + 1] ?? picture.today;
    const plan = movesThen(asOf(now, day), planned);
    for (const [herdId, knownUntil] of since) {
      if (day < knownUntil || unplaced.has(herdId)) continue;
      const before = moves.get(herdId) ?? [];
      const place = before.length === 0 ? told.get(herdId)!.inPaddockId : before.at(-1)!.paddockId;
      const own = plan.filter((move) => move.herdId === herdId);
      const went = wentFrom(own, { day, to: next, place, isLast: k === days.length - 1 });
      moves.set(herdId, [...before, ...went.map((move) => ({ ...move, herdId, knownUntil }))]);
    }
    now = movedAll(picture, moves);
    // One that goes back to where it was told to be may stand where another one has moved to.
    for (let held = someHeld(now, moves); held; held = someHeld(now, moves)) {
      unplaced.set(held.herdId, held);
      moves.delete(held.herdId);
      now = movedAll(picture, moves);
    }
  });
  const assumed = [...moves.values()].flat().filter(({ on }) => on < picture.today);
  return { picture: now, assumed, unplaced: [...unplaced.values()] };
}

/** A herd that is assumed to have moved to where another one is. */
function someHeld(
  now: AnimalPicture,
  moves: ReadonlyMap<string, readonly AssumedMove[]>,
): UnplacedHerd | undefined {
  for (const [herdId, own] of moves) {
    const { paddockId, knownUntil } = own.at(-1) ?? {};
    const holder = heldBy(now, { herdId, paddockId });
    if (holder === undefined || paddockId === undefined || knownUntil === undefined) continue;
    return { herdId, paddockId, heldBy: holder, knownUntil };
  }
  return undefined;
}

/** Assumed moves of a herd as they are told. */
export const movesMeant = (
  assumed: readonly AssumedMove[] | undefined,
  herdId: string,
): Omit<AssumedMove, 'knownUntil'>[] =>
  (assumed ?? [])
    .filter((move) => move.herdId === herdId)
    .map(({ knownUntil: _knownUntil, ...move }) => move);

/** Where a herd stands: as it was told, or as it is assumed to have moved since. */
export function placeNow(
  { id, inPaddockId, inSince }: Pick<Herd, 'id' | 'inPaddockId' | 'inSince'>,
  assumedMoves: readonly AssumedMove[] = [],
): HerdPlace {
  const assumed = assumedMoves.findLast(({ herdId }) => herdId === id);
  const [paddockId, since] = assumed ? [assumed.paddockId, assumed.on] : [inPaddockId, inSince];
  return {
    ...(paddockId === undefined ? {} : { inPaddockId: paddockId }),
    ...(paddockId === undefined || since === undefined ? {} : { inSince: since }),
  };
}

/** Whether nothing was told of a herd for longer than a stay lasts and a move is recent. */
export const isLongSilent = (
  { today }: Pick<AnimalPicture, 'today'>,
  tables: Tables,
  herd: Pick<Herd, 'longestStayDays'>,
  knownUntil: PlainDate,
): boolean => silentDays(tables, herd) < daysBetween(knownUntil, today);

/** That the plan rests on moves that nobody told. */
export function assumedIssues(
  { farm, herds, paddocks, today }: AnimalPicture,
  tables: Tables,
  assumed: readonly AssumedMove[],
): PlanIssue[] {
  return herds.flatMap((herd) => {
    const { id, name } = herd;
    const own = assumed.filter(({ herdId }) => herdId === id);
    if (own.length === 0 || !isLongSilent({ today }, tables, herd, own[0]!.knownUntil)) return [];
    const say = (on: PlainDate): string => formatDate(on, { ...farm, today });
    const list = own.map(({ paddockId, on }) => {
      const to = paddocks.find((paddock) => paddock.id === paddockId)?.name ?? 'off grass';
      return `${to} on ${say(on)}`;
    });
    return [
      issue(
        'act',
        'moves-assumed',
        `Nothing was told of ${name} since ${say(own[0]!.knownUntil)}. It is assumed that they moved as planned that day: ${listed(list)}. Heights, rest and what comes next go by that: look before they go in, and tell where they are.`,
        [tables.judgements.alarms.recentDays],
      ),
    ];
  });
}

/** That the plan rests on a place that a herd should have left. */
export const unplacedIssues = (
  { farm, herds, paddocks, today }: AnimalPicture,
  tables: Tables,
  unplaced: readonly UnplacedHerd[],
): PlanIssue[] =>
  unplaced.flatMap((each) => {
    const herd = herds.find(({ id }) => id === each.herdId)!;
    if (!isLongSilent({ today }, tables, herd, each.knownUntil)) return [];
    const nameOf = (paddockId: string | undefined): string =>
      paddocks.find(({ id }) => id === paddockId)!.name;
    const said = issue(
      'act',
      'herd-unplaced',
      `Nothing was told of ${herd.name} since ${formatDate(each.knownUntil, { ...farm, today })}. As planned that day they would be in ${nameOf(each.paddockId)} by now, but ${each.heldBy} is there: they stay planned in ${nameOf(herd.inPaddockId)}, whose grass they may have long eaten. Tell where they are.`,
      [tables.judgements.alarms.recentDays],
    );
    return [said];
  });

/**
 * The last day of which is told where a herd was, where that is past. A place that was never told but
 * only stands in a file of the farm is taken for how it is until it is too long ago.
 */
function silentSince(picture: AnimalPicture, tables: Tables, herd: Herd): PlainDate | undefined {
  const { inPaddockId, inSince } = herd;
  if (inPaddockId === undefined || inSince === undefined) return undefined;
  const open = (picture.grazings ?? []).findLast(
    ({ herdId, to }) => herdId === herd.id && to === undefined,
  );
  const since = open?.seenOn ?? inSince;
  const isPast = open ? since < picture.today : isLongSilent(picture, tables, herd, since);
  return isPast ? since : undefined;
}

/** Where a herd went by a plan of a day, from the day after it. */
function wentFrom(
  own: readonly Move[],
  given: {
    readonly day: PlainDate;
    readonly to: PlainDate;
    readonly place: string | undefined;
    readonly isLast: boolean;
  },
): Pick<AssumedMove, 'paddockId' | 'on'>[] {
  const { day, to, place, isLast } = given;
  const went = own.filter(({ from }) => day < from && from <= to);
  const moves = went
    .filter(({ paddockId }, k) => paddockId !== (went[k - 1]?.paddockId ?? place))
    .map(({ paddockId, from: on }) => ({ paddockId, on }));
  // The last day of the last stay may be that of the season: then they came off grass.
  const last = own.findLast(({ from }) => from <= to);
  const isOver = isLast && last !== undefined && last === own.at(-1) && last.to < addDays(to, -1);
  return isOver ? [...moves, { on: addDays(last.to, 1) }] : moves;
}

/** The herd that stands in a paddock beside another one. */
const heldBy = (
  { herds }: AnimalPicture,
  { herdId, paddockId }: { readonly herdId: string; readonly paddockId: string | undefined },
): string | undefined =>
  paddockId === undefined
    ? undefined
    : herds.find((other) => other.id !== herdId && other.inPaddockId === paddockId)?.name;

function movesThen(picture: AnimalPicture, planned: Planned): readonly Move[] {
  try {
    return planned(picture);
  } catch (error) {
    if (error instanceof FieldError) return [];
    throw error;
  }
}

const movedAll = (
  picture: AnimalPicture,
  moves: ReadonlyMap<string, readonly AssumedMove[]>,
): AnimalPicture =>
  picture.herds.reduce((now, herd) => {
    const own = moves.get(herd.id) ?? [];
    return own.length === 0 ? now : moved(now, herd, own);
  }, picture);

/** A picture with moves of a herd as if they had been told. */
export function moved<Of extends AnimalPicture>(
  picture: Of,
  herd: Herd,
  moves: readonly Omit<AssumedMove, 'knownUntil'>[],
): Of {
  const before = picture.grazings ?? [];
  const open = before.find(({ herdId, to }) => herdId === herd.id && to === undefined);
  const first = { herdId: herd.id, paddockId: herd.inPaddockId!, from: herd.inSince! };
  const stays = [{ paddockId: herd.inPaddockId, on: herd.inSince! }, ...moves].flatMap(
    ({ paddockId, on }, k): Grazing[] => {
      if (paddockId === undefined) return [];
      const next = moves[k];
      const stay = k === 0 ? first : { herdId: herd.id, paddockId, from: on };
      return [{ ...stay, ...(next ? { to: addDays(next.on, -1) } : {}) }];
    },
  );
  const last = moves.at(-1)!;
  const left = new Map(stays.flatMap(({ paddockId, to }) => (to ? [[paddockId, to]] : [])));
  const { inPaddockId: _inPaddockId, inSince: _inSince, ...rest } = herd;
  const isOn = last.paddockId !== undefined;
  const now = isOn ? { ...rest, inPaddockId: last.paddockId, inSince: last.on } : rest;
  return {
    ...picture,
    herds: picture.herds.map((each) => (each.id === herd.id ? now : each)),
    grazings: [...before.filter((stay) => stay !== open), ...stays],
    paddocks: picture.paddocks.map((paddock) => {
      const until = left.get(paddock.id);
      const isLater = until !== undefined && (paddock.lastGrazedOn ?? '') < until;
      return isLater ? { ...paddock, lastGrazedOn: until } : paddock;
    }),
  };
}

/**
 * A picture as it was on a day, as far as grass goes by it: nothing that was told of later days, and
 * of the weather after it only what is usual, so that the plan of that day is the same on each day on
 * which it is asked for.
 */
function asOf(picture: AnimalPicture, day: PlainDate): AnimalPicture {
  const { from, to, ...choices } = picture.pastureChoices;
  const { forecast: _forecast, recent, ...climate } = picture.climate;
  const grazings = (picture.grazings ?? [])
    .filter((stay) => stay.from <= day)
    .map(({ to: left, ...stay }): Grazing =>
      left !== undefined && left < day ? { ...stay, to: left } : stay,
    );
  return {
    ...picture,
    today: day,
    climate: { ...climate, ...(recent ? { recent: recent.filter(({ date }) => date < day) } : {}) },
    pastureChoices: {
      ...choices,
      ...(from !== undefined && from <= day ? { from } : {}),
      ...(to !== undefined && day < to ? { to } : {}),
    },
    herds: picture.herds.map((herd) => {
      const { inPaddockId: _inPaddockId, inSince, ...rest } = herd;
      if (inSince === undefined || inSince <= day) return herd;
      const stay = grazings.find((each) => each.herdId === herd.id && each.to === undefined);
      return stay ? { ...rest, inPaddockId: stay.paddockId, inSince: stay.from } : rest;
    }),
    paddocks: picture.paddocks.map((paddock) => {
      const { lastGrazedOn, ...rest } = paddock;
      return lastGrazedOn !== undefined && day < lastGrazedOn ? rest : paddock;
    }),
    readings: picture.readings.filter(({ date }) => date <= day),
    mowings: (picture.mowings ?? []).filter(({ date }) => date <= day),
    grazings,
  };
}
