import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { CalvingTold } from '../farm/calving-told.js';
import { rowById, type Tables } from '../tables/tables.js';
import { cowDay } from './cow-day.js';
import { calvesAtFoot, calvingsOf, dueOf, isThere, type Calving } from './herd-demand.js';
import { hasOwnDates, type PlannedHerd } from './named-cows.js';

/** A calving with the days on which a birth is of it, not of that of the year before or after. */
interface Awaited extends Calving {
  readonly births: { readonly from: PlainDate; readonly before: PlainDate };
}

/** A calving of a herd with the births that were told of it; those found not in calf are none of its head. */
export interface CalvingSeason extends Awaited {
  readonly told: readonly CalvingTold[];
  /** Cows that have calved, as it was told. */
  readonly calved: number;
}

/** The calvings of cattle that are there on a day, each with what was told of it by then. */
export function calvingSeasons(
  herd: PlannedHerd,
  facts: readonly CalvingTold[],
  on: PlainDate,
  tables: Tables,
): CalvingSeason[] {
  const calvings = calvingsOf(herd, tables)
    .filter(({ group }) => isThere(group, on))
    .map((calving): Awaited => ({ ...calving, births: birthsOf(calving, tables) }));
  const told = new Map(calvings.map((calving) => [calving, [] as CalvingTold[]]));
  const isOpen = (calving: Awaited): boolean => {
    const { head, calved } = settled(calving, told.get(calving)!);
    return calved < head;
  };
  for (const fact of facts) {
    if (fact.herdId !== herd.id || on < fact.date) continue;
    const near = calvings.filter((calving) => isInSeason(calving, fact.date));
    const calving =
      fact.cowId === undefined
        ? (askedAfter(near, fact) ?? likeliest(near.filter(isOpen), fact.date))
        : ofCow(near, herd, fact.cowId);
    if (calving) told.get(calving)!.push(fact);
  }
  return calvings.map((calving) => settled(calving, told.get(calving)!));
}

/** Calves beside their cows: those that were told, else those that are due by then. */
export function calvesBeside(
  herd: PlannedHerd,
  facts: readonly CalvingTold[],
  on: PlainDate,
  tables: Tables,
): number {
  return calvingSeasons(herd, facts, on, tables).reduce((sum, season) => {
    const { group, cow, told, head } = season;
    const births = told.filter(isBirth);
    const [first] = births;
    if (!first) {
      const isOwn = (each: PlannedHerd['groups'][number]): boolean =>
        cow ? each === group : each.of === group.of && !(each.cow && hasOwnDates(each.cow));
      const groups = herd.groups.filter((each) => isOwn(each) && dueOf(each, tables) !== undefined);
      return sum + Math.min(head, calvesAtFoot({ groups }, on, tables));
    }
    const dates = { date: on, typedOn: on };
    if (cowDay(group, first.date, dates, tables).calfDays === undefined) return sum;
    return (
      sum +
      Math.min(
        head,
        births.reduce((all, { calves }) => all + calves, 0),
      )
    );
  }, 0);
}

/**
 * Whether a cow may calve on a day, so that whoever is there is to know when to call: from the first
 * day on which a birth is of that calving until every birth is told, and where no date is known.
 */
export const mayCalve = (
  herd: PlannedHerd,
  facts: readonly CalvingTold[],
  on: PlainDate,
  tables: Tables,
): boolean =>
  herd.groups.some(
    (group) =>
      isThere(group, on) &&
      rowById(tables.cattle.classes, group.classId).asksWhenDue === true &&
      dueOf(group, tables) === undefined,
  ) ||
  calvingSeasons(herd, facts, on, tables).some(
    (season) => season.calved < season.head && isInSeason(season, on),
  );

/** Whether a birth on a day can be of this calving, not of that of the year before or after. */
export const isInSeason = ({ births }: Awaited, date: PlainDate): boolean =>
  births.from <= date && date < births.before;

function birthsOf({ due }: Calving, { judgements }: Tables): Awaited['births'] {
  const { calvingBeforeDays, calvingSeasonDays } = judgements.grass;
  const from = addDays(due.early, -calvingBeforeDays.value);
  return { from, before: addDays(from, calvingSeasonDays.value) };
}

/** The group that was asked after when it was told; its date may have been set right since. */
function askedAfter(
  near: readonly Awaited[],
  { classId, dueOn }: CalvingTold,
): Awaited | undefined {
  if (dueOn === undefined) return undefined;
  const own = near.filter(({ cow, group }) => !cow && group.classId === classId);
  return nearestTo(dueOn, own);
}

const nearestTo = (date: PlainDate, of: readonly Awaited[]): Awaited | undefined => {
  const far = ({ due }: Calving): number => Math.abs(daysBetween(due.due, date));
  return of.toSorted((a, b) => far(a) - far(b))[0];
};

/** Which it was of several nobody knows: one of a group that is due about then, or of the only cow. */
function likeliest(open: readonly Awaited[], date: PlainDate): Awaited | undefined {
  const groups = open.filter(({ cow }) => !cow);
  return nearestTo(date, groups) ?? (open.length === 1 ? open[0] : undefined);
}

function ofCow(near: readonly Awaited[], herd: PlannedHerd, cowId: string): Awaited | undefined {
  const classId = herd.cows.find(({ id }) => id === cowId)?.classId;
  return (
    near.find(({ cow }) => cow?.id === cowId) ??
    near.find(({ cow, group }) => !cow && group.classId === classId)
  );
}

function settled(calving: Awaited, told: readonly CalvingTold[]): CalvingSeason {
  const head = Math.max(0, calving.head - notInCalfOf(told));
  return { ...calving, head, told, calved: Math.min(head, calvedOf(told.filter(isBirth))) };
}

const isBirth = ({ calves, dead = 0, notInCalf }: CalvingTold): boolean =>
  0 < calves + dead || notInCalf === undefined;

/** Cows that were found to have no calf in them: a named one once. */
function notInCalfOf(told: readonly CalvingTold[]): number {
  const found = told.filter(({ notInCalf }) => notInCalf !== undefined);
  const named = new Set(found.flatMap(({ cowId }) => cowId ?? []));
  return found
    .filter(({ cowId }) => cowId === undefined)
    .reduce((sum, { notInCalf = 0 }) => sum + notInCalf, named.size);
}

/** Cows that calved: a named one once, and of a birth of two one with twins, so that none is missed. */
function calvedOf(births: readonly CalvingTold[]): number {
  const named = new Set(births.flatMap(({ cowId }) => cowId ?? []));
  const others = births
    .filter(({ cowId }) => cowId === undefined)
    .map(({ calves, dead = 0 }) => calves + dead)
    .reduce((sum, born) => sum + (born <= 2 ? 1 : born), 0);
  return named.size + others;
}
