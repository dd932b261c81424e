import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { input, quantity } from '../../explain/quantity.js';
import type { NumberQuantity, Quantity } from '../../explain/quantity.js';
import { restsOnAssumedHeight } from '../../farm/assumed.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { cattleWaterFormulas } from '../../pasture/cattle-water.js';
import { calvingSeasons } from '../../pasture/calving-season.js';
import { dueOf, milkedHead, milkedKg } from '../../pasture/herd-demand.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import { hayOfDay, herdDays, type HayOfDay, type HerdDay } from '../pasture/herd-day.js';
import { hayPartFormulas } from '../pasture/hay-part.js';
import { nothingToGrazeOf } from '../pasture/nothing-to-graze.js';
import { isLongSilent, movesMeant, placeNow } from '../pasture/moves-assumed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { MoveMeant, StillIn } from './move-meant.js';
import type { EventToMove } from '../work/event-to-move.js';
import { nextDate, type NextDate } from './days-to-go.js';
import { calvingSaid } from '../calving-said.js';
import { medicinesToday, type MedicineToday } from '../medicines.js';

/** A herd in one line of the day. */
export interface HerdLine {
  readonly kind: 'herd';
  readonly id: string;
  readonly name: string;
  readonly head: NumberQuantity;
  /** Where it grazes; left out when it is not on grass. */
  readonly on?: {
    readonly paddock: string;
    readonly since: PlainDate;
    readonly until: PlainDate;
    /** It goes there today, and nobody has told yet that it did. */
    readonly isToCome?: true;
  };
  /** Nobody told where it is: it is taken to have moved as planned. */
  readonly isAssumed?: true;
  /** What it is taken to have done since it was told where it stands. */
  readonly unsaid?: {
    readonly moves: readonly MoveMeant[];
    readonly stillIn: StillIn;
    /** It is so long ago that it is asked as an alarm. */
    readonly isAlarm?: true;
  };
  /** The paddock it stands in, as it was told or is assumed, and the one it goes into next. */
  readonly here?: { readonly paddockId: string; readonly paddock: string };
  /** There is nothing to graze where it stands: until when it is on hay. */
  readonly offUntil?: PlainDate;
  readonly nextPaddockId?: string;
  /** It was told to have come off grass, and since when. */
  readonly offSince?: PlainDate;
  /** The one named cow that is due about now. */
  readonly dueCowId?: string;
  /** Somebody milks some of them. */
  readonly isMilked?: true;
  /** What those give today by the plan, for whoever tells what they do. */
  readonly milkKg?: number;
  /** Left out while none is waited for. */
  readonly medicines?: readonly MedicineToday[];
  /** Calves that are still to come once some were told. */
  readonly calving?: readonly string[];
  readonly water: NumberQuantity;
  /** Left out on a day without any. */
  readonly hay?: HayOfDay;
  readonly next?: NextDate;
  /** What comes next is the turn-out, by the climate of a height that nobody gave. */
  readonly isHeightAssumed?: true;
}

/** Herds on the day it is, those without cattle yet left out. */
export function herdLines(
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
  /** Turn-outs that follow what makes ready for them. */
  put: readonly EventToMove[] = [],
): HerdLine[] {
  const dayOf = herdDays(picture, tables, { pasture, on: picture.today });
  return picture.herds.flatMap((herd) => {
    const day = dayOf(herd);
    const goesOut = put.find(({ ofId }) => ofId === herd.id)?.to;
    return day && 0 < day.head ? [herdLine(picture, tables, { herd, day, pasture, goesOut })] : [];
  });
}

function herdLine(
  picture: FarmPicture,
  tables: Tables,
  {
    herd,
    day,
    pasture,
    goesOut,
  }: {
    herd: Herd;
    day: HerdDay;
    pasture: PasturePlan | undefined;
    /** The day on which all is ready for them, where the grass was ready first. */
    goesOut: PlainDate | undefined;
  },
): HerdLine {
  const { today } = picture;
  const on = input('On', today, 'date');
  const head = quantity('Head', day.head, 'count', hayPartFormulas.headToday, [on]);
  const grazes = pasture?.moves.find(
    (move) => move.herdId === herd.id && move.from <= today && today <= move.to,
  );
  const stay = goesOut === undefined ? grazes : undefined;
  const { inPaddockId, inSince } = placeNow(herd, pasture?.assumedMoves);
  const isAssumed = pasture?.assumedMoves?.some(({ herdId }) => herdId === herd.id);
  const isToCome = stay?.from === today && stay.paddockId !== inPaddockId;
  const turnOut = pasture?.keyDates.herds.find(({ herdId }) => herdId === herd.id)?.turnOut;
  const ahead =
    goesOut !== undefined && grazes
      ? { ...grazes, from: goesOut }
      : pasture?.moves.find((move) => move.herdId === herd.id && today < move.from);
  const next =
    goesOut !== undefined && ahead
      ? nextDate(outFirst(paddockName(pasture!, ahead.paddockId)), { on: goesOut, today })
      : ahead && nextMove(pasture!, turnOut, { move: ahead, today });
  const goesTo = isToCome ? stay : ahead;
  const here = picture.paddocks.find(({ id }) => id === inPaddockId);
  const whole = withNamedCows(herd, picture.cows);
  const isMilked = 0 < milkedHead(whole, today, tables);
  const medicines = medicinesToday(picture, herd.id, { milk: isMilked });
  return {
    kind: 'herd',
    ...{ id: herd.id, name: herd.name, head },
    ...(stay
      ? {
          on: {
            paddock: paddockName(pasture!, stay.paddockId),
            since: inPaddockId === stay.paddockId ? (inSince ?? stay.from) : stay.from,
            until: stay.to,
            ...(isToCome ? { isToCome } : {}),
          },
        }
      : {}),
    ...(isAssumed ? { isAssumed, ...unsaidOf(picture, tables, { herd, pasture }) } : {}),
    ...(here ? { here: { paddockId: here.id, paddock: here.name } } : {}),
    ...(here && !stay ? offUntil(pasture, herd.id) : {}),
    ...(here ? {} : offSince(picture, herd.id)),
    ...(goesTo ? { nextPaddockId: goesTo.paddockId } : {}),
    ...dueNow(picture, tables, herd),
    ...(isMilked ? { isMilked, milkKg: milkedKg(whole, today, tables) } : {}),
    ...(0 < medicines.length ? { medicines } : {}),
    ...calvingNow(picture, tables, herd),
    water: quantity(
      'Water today',
      day.waterL,
      'L',
      cattleWaterFormulas.day,
      [input('Head', day.head, 'count'), on],
      { rows: [day.water] },
    ),
    ...(0 < day.dryKg ? { hay: hayOfDay(picture, tables, day) } : {}),
    ...(next ? { next } : {}),
    ...(ahead && turnOut?.value === ahead.from && restsOnAssumedHeight(picture.farm)
      ? { isHeightAssumed: true }
      : {}),
  };
}

/** The day after the last on which it grazed, as it was told. */
function offSince(
  { grazings = [] }: Pick<FarmPicture, 'grazings'>,
  herdId: string,
): Pick<HerdLine, 'offSince'> {
  const to = grazings.findLast((each) => each.herdId === herdId)?.to;
  return to === undefined ? {} : { offSince: addDays(to, 1) };
}

/** The last day before the next stay of a herd that stands where there is nothing to graze. */
function offUntil(pasture: PasturePlan | undefined, herdId: string): Pick<HerdLine, 'offUntil'> {
  if (!pasture || !nothingToGrazeOf(pasture, herdId)) return {};
  const next = pasture.moves.find((move) => move.herdId === herdId);
  return { offUntil: next ? addDays(next.from, -1) : pasture.to };
}

/** Of two that are due nobody knows which it was. */
function dueNow(picture: FarmPicture, tables: Tables, herd: Herd): Pick<HerdLine, 'dueCowId'> {
  const { today } = picture;
  const [only, another] = picture.cows.filter((cow) => {
    const due = cow.herdId === herd.id ? dueOf(cow, tables) : undefined;
    return due && due.early <= today && today <= due.late;
  });
  return only && !another ? { dueCowId: only.id } : {};
}

/** How many have calved of those that are due, and what to look for in the others. */
function calvingNow(
  { calvings = [], cows, farm, today }: FarmPicture,
  tables: Tables,
  herd: Herd,
): Pick<HerdLine, 'calving'> {
  const seasons = calvingSeasons(withNamedCows(herd, cows), calvings, today, tables);
  if (seasons.every(({ calved }) => calved === 0)) return {};
  // Whoever is overdue is asked after as an alarm.
  const awaited = seasons.filter(({ due }) => today <= due.late);
  const calving = calvingSaid(awaited, {
    ...{ date: today, units: farm.units, judged: tables.judgements.alarms },
  });
  return calving.length === 0 ? {} : { calving };
}

function unsaidOf(
  picture: FarmPicture,
  tables: Tables,
  { herd, pasture }: { readonly herd: Herd; readonly pasture: PasturePlan | undefined },
): Pick<HerdLine, 'unsaid'> {
  const own = pasture?.assumedMoves?.filter(({ herdId }) => herdId === herd.id) ?? [];
  const since = own[0]?.knownUntil;
  const told = picture.paddocks.find(({ id }) => id === herd.inPaddockId);
  if (since === undefined || !told) return {};
  return {
    unsaid: {
      moves: movesMeant(own, herd.id),
      stillIn: { herdId: herd.id, paddockId: told.id, paddock: told.name },
      ...(isLongSilent(picture, tables, herd, since) ? { isAlarm: true } : {}),
    },
  };
}

const paddockName = ({ paddocks }: PasturePlan, id: string): string =>
  paddocks.find((paddock) => paddock.id === id)?.name ?? id;

const outFirst = (paddock: string): string => `out on grass, ${paddock} first`;

/** The next move; before the season the turn-out. */
function nextMove(
  pasture: PasturePlan,
  turnOut: Quantity | undefined,
  { move, today }: { readonly move: PasturePlan['moves'][number]; readonly today: PlainDate },
): NextDate {
  const isTurnOut = turnOut?.value === move.from;
  const paddock = paddockName(pasture, move.paddockId);
  return nextDate(isTurnOut ? outFirst(paddock) : `on to ${paddock}`, {
    on: move.from,
    today,
    worked: isTurnOut ? turnOut : undefined,
  });
}
