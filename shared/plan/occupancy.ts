import { addDays, daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { CoopShare, Occupancy } from '../farm/occupancy.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { listed } from '../units/listed.js';
import type { PlanContext } from './context.js';
import { coopShareOf } from './coop-room.js';

/** What a batch holds on to, and when: its brooder and its pens or coop. */
export function occupanciesOf(context: PlanContext): Occupancy[] {
  const { batch, brooderDays, moveOutDay, life, dateOf } = context;
  const { daysBefore, daysAfter } = context.tables.judgements.birds;
  const result: Occupancy[] = [];
  const hold = (
    facilityId: string | undefined,
    from: string,
    to: string,
    share: Pick<Occupancy, 'share'> = {},
  ): void => {
    if (facilityId === undefined) return;
    result.push({ batchName: batch.name, facilityId, from, to, ...share });
  };
  hold(
    batch.brooderId,
    addDays(batch.arrivalDate, -daysBefore.value),
    addDays(dateOf(brooderDays), daysAfter.value),
  );
  if (moveOutDay !== undefined) {
    const home = batch.purpose === 'meat' ? (batch.penId ?? batch.coopId) : batch.coopId;
    const share = coopShareOf(context, dayInside(context, moveOutDay));
    hold(home, dateOf(moveOutDay), dateOf(life.days - 1), share);
  }
  return result;
}

/** The day of a batch on which its birds in their home are counted: today, or else that of the move. */
const dayInside = (
  { batch, life, today }: Pick<PlanContext, 'batch' | 'life' | 'today'>,
  moveOutDay: number,
): number => Math.min(life.days - 1, Math.max(moveOutDay, daysBetween(batch.arrivalDate, today)));

export const overlaps = (a: Occupancy, b: Occupancy): boolean =>
  a.facilityId === b.facilityId && a.from <= b.to && b.from <= a.to;

/** Who is in a place while a batch wants it: who is in its way, and with whom it goes together. */
export interface Meeting {
  readonly inTheWay: readonly Occupancy[];
  readonly together?: Together;
}

/** Flocks of hens in one coop, on the day on which they are most. */
export interface Together {
  readonly names: readonly string[];
  readonly from: PlainDate;
  readonly birds: number;
  /** Birds that its floor takes. */
  readonly room: number;
  readonly shortM2: number;
}

/** Hens go into a coop with other hens as far as its floor takes them all. */
export function meetingOf(own: Occupancy, occupied: readonly Occupancy[]): Meeting {
  const others = occupied.filter((other) => overlaps(own, other));
  const { share } = own;
  const hens = share ? others.filter((other) => other.share) : [];
  const apart = others.filter((other) => !hens.includes(other));
  if (!share || hens.length === 0) return { inTheWay: apart };
  const [most] = [own, ...hens]
    .map(({ from }) => (from < own.from ? own.from : from))
    .map((day) => onDay(day, [own, ...hens], share.ofM2))
    .sort((a, b) => a.room - a.birds - (b.room - b.birds));
  const together = most!;
  return { inTheWay: together.room < together.birds ? others : apart, together };
}

function onDay(day: PlainDate, flocks: readonly Occupancy[], ofM2: number): Together {
  const there = flocks.filter(({ from, to }) => from <= day && day <= to);
  const sum = (of: (share: CoopShare) => number): number =>
    there.reduce((all, { share }) => all + of(share!), 0);
  const birds = Math.round(sum((share) => share.birds));
  const eachM2 = sum((share) => share.floorM2) / sum((share) => share.birds);
  return {
    names: there.map(({ batchName }) => batchName),
    from: day,
    birds,
    room: birds === 0 ? 0 : Math.floor(ofM2 / eachM2 + 1e-9),
    shortM2: birds === 0 ? 0 : Math.max(0, birds * eachM2 - ofM2),
  };
}

/** One warning for each place that two batches want on the same days. */
export function collisions(
  mine: readonly Occupancy[],
  {
    occupied,
    facilities,
    tables,
    say,
  }: Pick<PlanContext, 'occupied' | 'facilities' | 'tables' | 'say'>,
): PlanIssue[] {
  const days = ({ from, to }: Occupancy): string => `${say(from, 'date')} to ${say(to, 'date')}`;
  return mine.flatMap((own) => {
    const name = facilities.find((f) => f.id === own.facilityId)?.name ?? 'A place';
    const { inTheWay, together } = meetingOf(own, occupied);
    const taken = inTheWay
      .filter((other) => !together || !other.share)
      .map((other) =>
        issue(
          'act',
          'place-taken',
          `${name} is wanted from ${days(own)}, but ${other.batchName} holds it from ${days(other)}, cleaning days counted. Move one of the two batches.`,
        ),
      );
    return together ? [...taken, inOneCoop(name, together, { tables, say })] : taken;
  });
}

function inOneCoop(
  coop: string,
  { names, from, birds, room, shortM2 }: Together,
  { tables, say }: Pick<PlanContext, 'tables' | 'say'>,
): PlanIssue {
  const rows = [tables.space.coop];
  const who = `From ${say(from, 'date')} ${listed(names)} are in ${coop} together`;
  return birds <= room
    ? issue(
        'note',
        'place-shared',
        `${who}: ${birds} of the ${room} birds that its floor takes. Count roost and nest boxes for all of them.`,
        rows,
      )
    : issue(
        'act',
        'place-taken',
        `${who}: ${birds} birds, and its floor takes ${room}. It is short of ${say(shortM2, 'm2')}: make it larger, or give some of them another place.`,
        rows,
      );
}
