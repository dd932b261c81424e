import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Grazing } from '../../farm/herd-places.js';
import type { Herd } from '../../farm/herd.js';
import type { AnimalPicture } from '../../farm/picture.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { FieldError } from '../../problems/field-problem.js';
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

/** Moves of a plan that nobody has told anything of since. */
type Planned = (picture: AnimalPicture) => { readonly moves: readonly Move[] };

/**
 * A picture in which herds of which nothing was told for longer than a stay lasts have moved as they were
 * planned to on the last day of which something was told. Taking them to stand would let the plan
 * wait for grass that they have long eaten, and rest paddocks that they are in.
 *
 * A herd that would then stand where another one is stays where it was told to be, and is asked about.
 *
 * @param planned the plan of a picture as it was told
 */
export function withMovesAssumed(
  picture: AnimalPicture,
  tables: Tables,
  planned: Planned,
): {
  readonly picture: AnimalPicture;
  readonly assumed: readonly AssumedMove[];
  readonly unplaced: readonly UnplacedHerd[];
} {
  let now = picture;
  const assumed: AssumedMove[] = [];
  const unplaced: UnplacedHerd[] = [];
  for (const herd of picture.herds) {
    const since = silentSince(picture, tables, herd);
    if (since === undefined) continue;
    const moves = movesSince(picture, { herd, since }, planned);
    const last = moves.at(-1);
    if (!last) continue;
    const { paddockId } = last;
    const holder = now.herds.find(
      (other) => other.id !== herd.id && other.inPaddockId === paddockId,
    );
    if (paddockId !== undefined && holder) {
      unplaced.push({ herdId: herd.id, paddockId, heldBy: holder.name, knownUntil: since });
      continue;
    }
    assumed.push(...moves);
    now = moved(now, herd, moves);
  }
  return { picture: now, assumed, unplaced };
}

/** That the plan rests on moves that nobody told. */
export function assumedIssues(
  { farm, herds, paddocks, today }: AnimalPicture,
  tables: Tables,
  assumed: readonly AssumedMove[],
): PlanIssue[] {
  return herds.flatMap(({ id, name }) => {
    const own = assumed.filter(({ herdId }) => herdId === id);
    if (own.length === 0) return [];
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
  unplaced.map((each) => {
    const herd = herds.find(({ id }) => id === each.herdId)!;
    const nameOf = (paddockId: string | undefined): string =>
      paddocks.find(({ id }) => id === paddockId)!.name;
    return issue(
      'act',
      'herd-unplaced',
      `Nothing was told of ${herd.name} since ${formatDate(each.knownUntil, { ...farm, today })}. As planned that day they would be in ${nameOf(each.paddockId)} by now, but ${each.heldBy} is there: they stay planned in ${nameOf(herd.inPaddockId)}, whose grass they may have long eaten. Tell where they are.`,
      [tables.judgements.alarms.recentDays],
    );
  });

/** The last day of which is told where a herd was, once that is longer ago than a stay lasts. */
function silentSince(
  { grazings = [], today }: AnimalPicture,
  { pasture, judgements }: Tables,
  { id, inPaddockId, inSince, longestStayDays = pasture.longestStayDays.value }: Herd,
): PlainDate | undefined {
  if (inPaddockId === undefined || inSince === undefined) return undefined;
  const open = grazings.findLast(({ herdId, to }) => herdId === id && to === undefined);
  const since = open?.seenOn ?? inSince;
  const quiet = daysBetween(since, today);
  return quiet <= longestStayDays + judgements.alarms.recentDays.value ? undefined : since;
}

/** Moves of a herd from a day to this one, as they were planned on that day. */
function movesSince(
  picture: AnimalPicture,
  { herd, since }: { readonly herd: Herd; readonly since: PlainDate },
  planned: Planned,
): AssumedMove[] {
  const own = movesThen(asOf(picture, herd, since), planned).filter(
    ({ herdId }) => herdId === herd.id,
  );
  const went = own.filter(({ from }) => since < from && from <= picture.today);
  const moves = went
    .filter(({ paddockId }, k) => paddockId !== (went[k - 1]?.paddockId ?? herd.inPaddockId))
    .map(({ paddockId, from: on }) => ({ herdId: herd.id, paddockId, on, knownUntil: since }));
  // The last day of the last stay may be that of the season: then they came off grass.
  const last = own.findLast(({ from }) => from <= picture.today);
  const isOver = last !== undefined && last === own.at(-1) && last.to < addDays(picture.today, -1);
  return isOver
    ? [...moves, { herdId: herd.id, on: addDays(last.to, 1), knownUntil: since }]
    : moves;
}

function movesThen(picture: AnimalPicture, planned: Planned): readonly Move[] {
  try {
    return planned(picture).moves;
  } catch (error) {
    if (error instanceof FieldError) return [];
    throw error;
  }
}

/** A picture with moves of a herd as if they had been told. */
function moved(picture: AnimalPicture, herd: Herd, moves: readonly AssumedMove[]): AnimalPicture {
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

/** A picture as it was on a day, as far as grass goes by it: nothing that was told of later days. */
function asOf(picture: AnimalPicture, herd: Herd, today: PlainDate): AnimalPicture {
  const { from, to, ...choices } = picture.pastureChoices;
  return {
    ...picture,
    today,
    pastureChoices: {
      ...choices,
      ...(from !== undefined && from <= today ? { from } : {}),
      ...(to !== undefined && today < to ? { to } : {}),
    },
    herds: picture.herds.map((each) => {
      if (each.id === herd.id || each.inSince === undefined || each.inSince <= today) return each;
      const { inPaddockId: _inPaddockId, inSince: _inSince, ...elsewhere } = each;
      return elsewhere;
    }),
    paddocks: picture.paddocks.map((paddock) => {
      const { lastGrazedOn, ...rest } = paddock;
      return lastGrazedOn !== undefined && today < lastGrazedOn ? rest : paddock;
    }),
    readings: picture.readings.filter(({ date }) => date <= today),
    mowings: (picture.mowings ?? []).filter(({ date }) => date <= today),
    grazings: (picture.grazings ?? [])
      .filter((stay) => stay.from <= today)
      .map(({ to: left, ...stay }) =>
        left !== undefined && left < today ? { ...stay, to: left } : stay,
      ),
  };
}
