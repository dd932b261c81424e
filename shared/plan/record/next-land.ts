import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { asMeant } from '../../farm/cattle-gone.js';
import type { CattleGroup, Herd } from '../../farm/herd.js';
import type { ClosedDays, Paddock } from '../../farm/paddock.js';
import type { FarmPicture } from '../../farm/picture.js';

/** Cattle of a herd that came in a year, as they would come again in the next one. */
export interface NextHerd {
  readonly ofId: string;
  readonly name: string;
  /** Groups that join those there are. */
  readonly groups: readonly CattleGroup[];
  /** The day before which none of the herd is on grass, where one was typed for the old year. */
  readonly turnOutOn?: PlainDate;
  /** Calvings of cattle that stay, a year later; left out where none was typed for the old year. */
  readonly calvings?: readonly NextCalving[];
  readonly isThere: boolean;
}

/** A calving that is over, and when the next one is to be expected. */
export interface NextCalving {
  /** Place of the group in its herd, from 0, or the cow with a name. */
  readonly of: { readonly group: number } | { readonly cowId: string };
  /** Head, or the name of the cow. */
  readonly who: string;
  readonly was: PlainDate;
  readonly calvesOn: PlainDate;
}

/** Days of a paddock that come again: those on which it is shut, and the harvest of its garden. */
export interface NextPaddock {
  readonly ofId: string;
  readonly name: string;
  /** Spans that join those there are. */
  readonly closedDays: readonly ClosedDays[];
  readonly harvestOn?: PlainDate;
  readonly lastHarvestOn?: PlainDate;
}

/** Dates moved to the next year, and what is so near that it is the same. */
interface Moved {
  readonly year: number;
  readonly byDays: number;
  readonly sameWithinDays: number;
  readonly calvesAgainDays: number;
}

/** Of a group what is of one year: who is bred and when they calve is not known yet of the next. */
const OF_ONE_YEAR: ReadonlySet<string> = new Set([
  'bredOn',
  'calvesOn',
] satisfies (keyof CattleGroup)[]);

/**
 * Calvings of a year that are over, of cattle that stay: about the same day is asked about again, else
 * the herd would have no calving at all in the next one.
 */
function calvingsAgain(
  herd: Herd,
  { cows, today }: Pick<FarmPicture, 'cows' | 'today'>,
  moved: Moved,
): NextCalving[] {
  const isOver = (on: PlainDate | undefined): on is PlainDate =>
    on !== undefined && isOf(on, moved) && on < today;
  const next = (was: PlainDate) => ({ was, calvesOn: addDays(was, moved.calvesAgainDays) });
  return [
    ...herd.groups.flatMap(({ calvesOn, arrivesOn, leavesOn, head }, group): NextCalving[] =>
      isOver(calvesOn) && leavesOn === undefined && !isOf(arrivesOn, moved)
        ? [{ of: { group }, who: `${head} head`, ...next(calvesOn) }]
        : [],
    ),
    ...cows.flatMap(({ id, name, herdId, calvesOn }): NextCalving[] =>
      herdId === herd.id && isOver(calvesOn)
        ? [{ of: { cowId: id }, who: name, ...next(calvesOn) }]
        : [],
    ),
  ];
}

/** Cattle that came in a year, stockers above all, and calvings of those that were there before. */
export const herdsAgain = (
  picture: Pick<FarmPicture, 'herds' | 'cows' | 'today'>,
  moved: Moved,
): NextHerd[] =>
  picture.herds.flatMap((herd): NextHerd[] => {
    const { id, name, groups: told, turnOutOn } = herd;
    const calvings = calvingsAgain(herd, picture, moved);
    const groups = asMeant(told);
    const again = groups.filter(({ arrivesOn }) => isOf(arrivesOn, moved)).map(groupIn(moved));
    const later = isOf(turnOutOn, moved) ? addDays(turnOutOn!, moved.byDays) : undefined;
    if (again.length + calvings.length === 0 && later === undefined) return [];
    const isThere = (group: CattleGroup): boolean =>
      groups.some(
        ({ classId, arrivesOn }) =>
          classId === group.classId && isNear(arrivesOn, group.arrivesOn!, moved),
      );
    const missing = again.filter((group) => !isThere(group));
    const isAllThere = 0 < again.length && missing.length + calvings.length === 0;
    return [
      {
        // Where all of it came over already, it can still be asked for once more.
        ...{ ofId: id, name, groups: isAllThere ? again : missing },
        ...(later === undefined ? {} : { turnOutOn: later }),
        ...(calvings.length === 0 ? {} : { calvings }),
        isThere: isAllThere,
      },
    ];
  });

const groupIn =
  ({ byDays }: Moved) =>
  (group: CattleGroup): CattleGroup => {
    const kept = Object.entries(group).filter(([field]) => !OF_ONE_YEAR.has(field));
    const { arrivesOn, leavesOn, ...rest } = Object.fromEntries(kept) as unknown as CattleGroup;
    return {
      ...rest,
      arrivesOn: addDays(arrivesOn!, byDays),
      ...(leavesOn === undefined ? {} : { leavesOn: addDays(leavesOn, byDays) }),
    };
  };

/**
 * Days of paddocks that come again. Left out: wet ground, which nobody plans, what comes about the
 * same day already, and the harvest of a garden that is not over yet.
 */
export const paddocksAgain = (
  { paddocks, today }: Pick<FarmPicture, 'paddocks' | 'today'>,
  moved: Moved,
): NextPaddock[] =>
  paddocks.flatMap((paddock): NextPaddock[] => {
    const there = paddock.closedDays ?? [];
    const closedDays = there
      .filter(({ from, why }) => why !== 'wet' && isOf(from, moved))
      .map(({ from, to, why }) => ({
        ...{ from: addDays(from, moved.byDays), to: addDays(to, moved.byDays), why },
      }))
      .filter(
        (span) => !there.some((old) => old.why === span.why && isNear(old.from, span.from, moved)),
      );
    const harvest = harvestIn(paddock, today, moved);
    if (closedDays.length === 0 && harvest.harvestOn === undefined) return [];
    return [{ ofId: paddock.id, name: paddock.name, closedDays, ...harvest }];
  });

function harvestIn(
  { harvestOn, lastHarvestOn }: Paddock,
  today: PlainDate,
  moved: Moved,
): Pick<NextPaddock, 'harvestOn' | 'lastHarvestOn'> {
  const isOver = harvestOn !== undefined && (lastHarvestOn ?? harvestOn) < today;
  if (!isOver || !isOf(harvestOn, moved)) return {};
  return {
    harvestOn: addDays(harvestOn, moved.byDays),
    ...(lastHarvestOn === undefined ? {} : { lastHarvestOn: addDays(lastHarvestOn, moved.byDays) }),
  };
}

const isOf = (date: PlainDate | undefined, { year }: Moved): boolean =>
  date?.startsWith(`${year}-`) === true;

const isNear = (one: PlainDate | undefined, other: PlainDate, { sameWithinDays }: Moved): boolean =>
  one !== undefined && Math.abs(daysBetween(one, other)) <= sameWithinDays;
