import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { together } from '../../explain/quantity.js';
import type { Herd } from '../../farm/herd.js';
import { isThere, milkedHead } from '../../pasture/herd-demand.js';
import { isApart } from '../../pasture/quarantine.js';
import { rowById, type Tables } from '../../tables/tables.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { freshGrassOf, type FreshGrass } from '../pasture/strips.js';
import { hoursOf } from '../tasks/task-hours.js';
import type { LookNeed, PlannedChore } from './work-need.js';
import { movesKey } from '../../farm/herd-move-work.js';

/** Work of those that stand apart: nobody looks at the others with it. */
export const OF_THOSE_APART = 'cattle.twice-daily-health-checks-stock-handled-last';

const CHECK = 'turn-out.daily-check-count-water-fence-volts-feet';
/** Work that brings a herd its hay. */
export const HAY = 'turn-out.keep-offering-hay-while-dung-firms-up';

/** A herd that is looked at every day, and its season on grass where one is planned. */
export interface HerdRound {
  readonly herd: Herd;
  readonly pasture?: PasturePlan;
  /** They go out so many days later than the grass has them, once all is ready. */
  readonly outLaterDays?: number;
  /** The day on which they go out then. */
  readonly outOn?: PlainDate;
}

interface RoundOf extends HerdRound {
  readonly tables: Tables;
  readonly today: PlainDate;
  readonly days: number;
  /** Days from today on which another daily chore of the herd takes somebody there anyhow. */
  readonly isSeen: (day: number) => boolean;
  /** Of those, days on which it brings their hay. */
  readonly isFed: (day: number) => boolean;
}

/**
 * Milking; moves on grass; hay on every day on which they have it; and the daily look at a herd on days
 * for which no template asks: from autumn to turn-out, and on grass once the checks after turn-out have
 * ended. Cattle are looked at every day.
 *
 * Hours by the templates of the same work after turn-out, for the most head there are.
 */
export function herdRounds(round: RoundOf): PlannedChore[] {
  const { herd, days, isSeen, isFed } = round;
  const there = Array.from({ length: days }, (_, day) => day).filter(
    (day) => 0 < headOn(round, day),
  );
  const onHay = there.filter(isOnHay(round));
  const hay = onHay.filter((day) => !isSeen(day));
  const hayAlone = onHay.filter((day) => isSeen(day) && !isFed(day));
  const grass = there.filter((day) => !isSeen(day) && !isOnHay(round)(day));
  return [
    ...milkingOf(round),
    ...movesOf(round),
    ...choreOf(round, hay, {
      key: `herd/${herd.id}/winter-round`,
      name: 'Feed hay, look at water and every animal',
      templates: [HAY, CHECK],
    }),
    ...choreOf(round, hayAlone, {
      key: `herd/${herd.id}/hay`,
      name: 'Feed hay, see to water',
      templates: [HAY],
    }),
    ...choreOf(round, grass, {
      key: `herd/${herd.id}/round`,
      name: 'Look at water and every animal',
      templates: [CHECK],
    }),
  ];
}

/** Hours between two looks at cattle on grass or hay, and at cows in milk. */
const LOOK_H = 24;
const MILK_LOOK_H = 12;

/**
 * Cattle are looked at once a day at least, cows in milk at both milkings: common practice, no
 * source. Oftener around a calving or an arrival, as the tasks of those say.
 */
export function herdLooks(round: Omit<RoundOf, 'isSeen' | 'isFed'>): LookNeed[] {
  const { herd, tables, today, days } = round;
  const all = Array.from({ length: days }, (_, day) => day);
  const there = all.filter((day) => 0 < headOn(round, day));
  const milked = there.filter((day) => 0 < milkedHead(herd, addDays(today, day), tables));
  const of = { id: herd.id, name: herd.name };
  return (
    [
      [there, LOOK_H],
      [milked, MILK_LOOK_H],
    ] as const
  ).flatMap(([on, everyH]) => runsOf(on).map((run) => ({ of, everyH, ...run })));
}

/** Days one after the other, from the first to the last of each run. */
function runsOf(days: readonly number[]): { fromDay: number; toDay: number }[] {
  const runs: { fromDay: number; toDay: number }[] = [];
  for (const day of days) {
    const last = runs.at(-1);
    if (last?.toDay === day - 1) last.toDay = day;
    else runs.push({ fromDay: day, toDay: day });
  }
  return runs;
}

/** Milking, on the days on which some milk cow is in milk, for the most that are at once. */
function milkingOf({ herd, tables, today, days }: RoundOf): PlannedChore[] {
  const { milking } = tables.work;
  const cows = Array.from({ length: days }, (_, day) =>
    milkedHead(herd, addDays(today, day), tables),
  );
  const onDays = cows.flatMap((count, day) => (0 < count ? [day] : []));
  if (onDays.length === 0) return [];
  const { timesADay, hoursEachTime, hoursEachCow } = milking;
  return [
    {
      key: `herd/${herd.id}/milking`,
      name: timesADay === 2 ? 'Milk, morning and evening' : `Milk, ${timesADay} times`,
      belongsTo: { kind: 'herd', id: herd.id, name: herd.name },
      hoursPerDay: timesADay * (hoursEachTime + hoursEachCow * Math.max(...cows)),
      fromDay: onDays[0]!,
      toDay: onDays.at(-1)!,
      onDays: new Set(onDays),
      rounds: timesADay === 2 ? ['morning', 'evening'] : ['morning'],
      row: together([milking]),
    },
  ];
}

/** Moves to fresh grass, strip after strip, as the grass plan has them: into which paddock or strip. */
function movesOf({
  herd,
  pasture,
  outLaterDays = 0,
  tables,
  today,
  days,
}: RoundOf): PlannedChore[] {
  const { herdMove } = tables.work;
  if (!pasture) return [];
  const planned = daysBetween(today, pasture.to);
  const nameOn = new Map<number, string>();
  for (const fresh of freshGrassOf(herd, pasture, today)) {
    const day = daysBetween(today, fresh.date) + outLaterDays;
    if (0 <= day && day < days) nameOn.set(day, movedInto(fresh));
    // Of the next season no more is known than that it will be much like this one.
    const again = day + YEAR_DAYS;
    if (planned < again && 0 <= again && again < days && !nameOn.has(again))
      nameOn.set(again, TO_FRESH_GRASS);
  }
  const onDays = [...nameOn.keys()];
  if (onDays.length === 0) return [];
  return [
    {
      key: movesKey(herd.id),
      name: TO_FRESH_GRASS,
      nameOn,
      belongsTo: { kind: 'herd', id: herd.id, name: herd.name },
      hoursPerDay: herdMove.hoursBase,
      fromDay: Math.min(...onDays),
      toDay: Math.max(...onDays),
      onDays: new Set(onDays),
      row: together([herdMove]),
    },
  ];
}

const TO_FRESH_GRASS = 'Move them to fresh grass: measure, set fences, count through';

/** “Move them into Creek: …”, or within a paddock “Next strip of Creek (2 of 3): …”. */
const movedInto = ({ paddock, strip, strips }: FreshGrass): string =>
  strip === 1
    ? `Move them into ${paddock}${strips === 1 ? '' : `, strip 1 of ${strips}`}: measure, set fences, count through`
    : `Give them the next strip of ${paddock}, ${strip} of ${strips}: measure, set fences, count through`;

function choreOf(
  round: RoundOf,
  onDays: readonly number[],
  { key, name, templates }: { key: string; name: string; templates: readonly string[] },
): PlannedChore[] {
  if (onDays.length === 0) return [];
  const { herd, tables } = round;
  const rows = templates.map((id) => rowById(tables.herdTaskTemplates, id));
  const head = Math.max(...onDays.map((day) => headOn(round, day)));
  return [
    {
      ...{ key, name },
      belongsTo: { kind: 'herd', id: herd.id, name: herd.name },
      hoursPerDay: rows.reduce((sum, row) => sum + hoursOf(row, head).hours, 0),
      fromDay: onDays[0]!,
      toDay: onDays.at(-1)!,
      onDays: new Set(onDays),
      rounds: [...new Set(rows.flatMap((row) => row.rounds ?? []))],
      row: together(rows),
    },
  ];
}

/** Cattle of the herd that is there, those left out that still stand apart: their work is their own. */
const headOn = (
  { herd, tables, today }: Pick<RoundOf, 'herd' | 'tables' | 'today'>,
  day: number,
): number => {
  const on = addDays(today, day);
  return herd.groups.reduce(
    (sum, group) =>
      sum + (isThere(group, on) && !isApart(herd.groups, group, on, tables) ? group.head : 0),
    0,
  );
};

/**
 * Within the season that is planned as it is planned; after it on the days on which they had hay a
 * year before. Of a day that was no part of the plan a year before, until there is grass again as this
 * year; they are on it from then on.
 */
const isOnHay =
  ({ herd, pasture, outLaterDays = 0, outOn, today }: RoundOf) =>
  (day: number): boolean => {
    if (!pasture) return true;
    const on = addDays(today, day);
    if (outOn !== undefined && addDays(outOn, -outLaterDays) <= on && on < outOn) return true;
    const asOn = pasture.to < on ? addDays(on, -YEAR_DAYS) : on;
    const part = pasture.herds.find(({ id }) => id === herd.id);
    if (pasture.to < asOn) return true;
    if (asOn < pasture.from) return part?.grassAgain === undefined || on < part.grassAgain;
    return 0 < (part?.hayByDay[daysBetween(pasture.from, asOn)] ?? 0);
  };

const YEAR_DAYS = 365;
