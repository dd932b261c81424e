import { addDays, type PlainDate } from '../calendar/plain-date.js';
import { holding, type HerdMove } from './told-fact.js';

/** Where a herd is, and since when; neither when it is in no paddock. */
export interface HerdPlace {
  readonly inPaddockId?: string;
  readonly inSince?: PlainDate;
}

/** A paddock that a herd left: the last day it was grazed, and when that was told. */
export interface Grazed {
  readonly paddockId: string;
  readonly noUseAfter: PlainDate;
  readonly toldAt: string;
}

/** A herd in a paddock from a day to a day; without the last where it is there. */
export interface Grazing {
  readonly herdId: string;
  readonly paddockId: string;
  readonly from: PlainDate;
  readonly to?: PlainDate;
  /** The last day on which they were seen to be still there. */
  readonly seenOn?: PlainDate;
}

interface Stay {
  readonly paddockId: string | undefined;
  readonly from: PlainDate;
  /** It is not known since when: `from` only says where it stands among the others. */
  readonly isVague: boolean;
  readonly toldAt: string;
  readonly seenOn?: PlainDate;
}

/** Stands before every date, for a place of which it is not known since when. */
const EVER = '';

/**
 * Where a herd is by all its moves that hold.
 *
 * @param moves of one herd; those told late of an earlier day find their place by the day
 * @param paddockIds paddocks there are: in one that is gone no herd stands
 */
export function placeOf(moves: readonly HerdMove[], paddockIds: ReadonlySet<string>): HerdPlace {
  const last = staysOf(moves).at(-1);
  if (last?.paddockId === undefined || !paddockIds.has(last.paddockId)) return {};
  return {
    inPaddockId: last.paddockId,
    ...(last.isVague ? {} : { inSince: last.from }),
  };
}

/** The paddock in which a herd was on a day, before anything that was told of the day itself. */
export const paddockOn = (moves: readonly HerdMove[], on: PlainDate): string | undefined =>
  staysOf(moves).findLast(({ from }) => from < on)?.paddockId;

/** Paddocks that herds left, by all moves of a farm that hold. */
export function grazedBy(moves: readonly HerdMove[]): Grazed[] {
  return [...byHerd(moves).values()].flatMap((own) => {
    const stays = staysOf(own);
    return stays.flatMap(({ paddockId }, i): Grazed[] => {
      const next = stays[i + 1];
      const isLeft = next && next.paddockId !== paddockId && next.from !== EVER;
      if (paddockId === undefined || !isLeft) return [];
      return [{ paddockId, noUseAfter: addDays(next.from, -1), toldAt: next.toldAt }];
    });
  });
}

/** Stays of all herds whose days are known, by all moves of a farm that hold. */
export const grazingsOf = (moves: readonly HerdMove[]): Grazing[] =>
  [...byHerd(moves)].flatMap(([herdId, own]) => grazingsOfHerd(herdId, own));

/** The same of one herd. */
export function grazingsOfHerd(herdId: string, moves: readonly HerdMove[]): Grazing[] {
  const stays = staysOf(moves);
  return stays.flatMap(({ paddockId, from, isVague, seenOn }, i): Grazing[] => {
    const next = stays[i + 1];
    if (paddockId === undefined || isVague || next?.isVague) return [];
    const to = next ? { to: addDays(next.from, -1) } : {};
    return [{ herdId, paddockId, from, ...to, ...(seenOn === undefined ? {} : { seenOn }) }];
  });
}

/** Kept by the list of moves: places, grazed days and stays are all asked for after each move. */
const ofHerds = new WeakMap<readonly HerdMove[], ReadonlyMap<string, readonly HerdMove[]>>();

/** Moves of each herd. */
export function byHerd(moves: readonly HerdMove[]): ReadonlyMap<string, readonly HerdMove[]> {
  const known = ofHerds.get(moves);
  if (known) return known;
  const found = new Map<string, HerdMove[]>();
  for (const move of moves) {
    const own = found.get(move.about);
    if (own) own.push(move);
    else found.set(move.about, [move]);
  }
  ofHerds.set(moves, found);
  return found;
}

/**
 * When a paddock was last grazed: the later of what was typed and of what was told after it.
 *
 * @param typedAt when it was typed; what was told before no longer counts
 */
export function lastGrazedOn(
  paddockId: string,
  typed: PlainDate | undefined,
  typedAt: string | undefined,
  grazed: readonly Grazed[],
): PlainDate | undefined {
  return grazed
    .filter((each) => each.paddockId === paddockId && (typedAt ?? '') < each.toldAt)
    .reduce(
      (last, { noUseAfter }) => (last === undefined || last < noUseAfter ? noUseAfter : last),
      typed,
    );
}

const staysOfMoves = new WeakMap<readonly HerdMove[], readonly Stay[]>();

/** Stays of one herd, by day; kept by the list of its moves. */
function staysOf(moves: readonly HerdMove[]): readonly Stay[] {
  const known = staysOfMoves.get(moves);
  if (known) return known;
  const stays = new Stays();
  const held = holding(moves);
  for (const move of held) if (!move.details.isStill) stays.add(move);
  for (const move of held) if (move.details.isStill) stays.see(move);
  staysOfMoves.set(moves, stays.all);
  return stays.all;
}

/**
 * Who types where a herd is says how it is now, whatever day it came there. The day before counts as
 * now: evenings in the west are the next day by the clock of the service.
 */
const seenWhenTyped = ({
  isTyped,
  on,
  toldAt,
}: Pick<HerdMove, 'on' | 'toldAt'> & { readonly isTyped: boolean }): { seenOn?: PlainDate } => {
  const day = toldAt.slice(0, 10);
  return isTyped && addDays(on, 1) < day ? { seenOn: addDays(day, -1) } : {};
};

/** Grows move by move in one list: ten years of moves are not copied for each of them. */
class Stays {
  all: Stay[] = [];
  /** No stay begins later. */
  private latest: PlainDate = EVER;

  add({ on, details, toldAt }: HerdMove): void {
    const { paddockId, isTyped = false, isSinceUnknown = false } = details;
    // Ticked off where somebody had told the move already: nothing moved.
    if (details.work !== undefined && this.at(on)?.paddockId === paddockId) return;
    const last = this.all.at(-1);
    if (isTyped && (isSinceUnknown || paddockId === undefined)) {
      // It says what the last stay really was.
      this.all.pop();
      this.all.push({ paddockId, toldAt, from: last?.from ?? EVER, isVague: true });
      return;
    }
    const stay: Stay = {
      paddockId,
      toldAt,
      from: on,
      isVague: false,
      ...seenWhenTyped({ isTyped, on, toldAt }),
    };
    if (isTyped) this.all = [...this.all.filter(({ from }) => from < on), stay];
    // A place without a day was taken before whatever was told after it.
    else if (last?.isVague && on < last.from) this.all.splice(-1, 1, { ...last, from: on }, stay);
    else this.insert(stay);
    if (this.latest < on) this.latest = on;
  }

  /** They were seen there: it says nothing where another move was told for that day since. */
  see({ on, details: { paddockId } }: HerdMove): void {
    const k = this.all.findLastIndex(({ from }) => from <= on);
    const stay = this.all[k];
    if (!stay || stay.paddockId !== paddockId || on <= (stay.seenOn ?? EVER)) return;
    this.all[k] = { ...stay, seenOn: on };
  }

  private at(day: PlainDate): Stay | undefined {
    return this.all.findLast(({ from }) => from <= day);
  }

  private insert(stay: Stay): void {
    const after =
      this.latest <= stay.from ? -1 : this.all.findIndex(({ from }) => stay.from < from);
    if (after === -1) this.all.push(stay);
    else this.all.splice(after, 0, stay);
  }
}
