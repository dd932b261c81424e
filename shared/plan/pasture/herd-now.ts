import type { PlainDate } from '../../calendar/plain-date.js';
import type { HerdPart } from './herd-part.js';
import type { DaysOfMowing } from './mowing-laid.js';
import { nothingToGrazeOf, OFF_IT } from './nothing-to-graze.js';
import type { PasturePlan } from './pasture-plan.js';
import { seasonRows, type GrazeRow, type HayRow, type SeasonRow } from './season-rows.js';

type Stay = GrazeRow | HayRow;

/** Where a herd is on the day of the plan, and where it goes next. */
export interface HerdNow {
  readonly herd: HerdPart;
  /** Left out before the season, and when the herd has left. */
  readonly now?: Stay;
  /** The next stay; before the season the first one on grass. */
  readonly next?: Stay;
}

/** Where each herd is today and goes next. */
export function herdsNow(plan: PasturePlan): HerdNow[] {
  const stays = seasonRows(plan).filter(isStay);
  const { today } = plan;
  return plan.herds.map((herd) => {
    const own = stays.filter((stay) => herdOf(stay) === herd.id);
    const now = own.find(({ from, to }) => from <= today && today <= to);
    const next = own.find(
      ({ from, kind }) => today < from && (now !== undefined || kind === 'graze'),
    );
    return { herd, ...(now ? { now } : {}), ...(next ? { next } : {}) };
  });
}

/**
 * Where it is and where it goes, in a sentence: “Cows: in Oak until Tue, May 25, then Pond.”
 *
 * @param sayDate writes a date as its reader does
 */
export function sayHerdNow(
  plan: PasturePlan,
  { herd, now, next }: HerdNow,
  sayDate: (date: PlainDate) => string,
): string {
  const then = next && whereOf(plan, next);
  if (!now) {
    return next
      ? `${herd.name}: not on grass yet; out on ${sayDate(next.from)}, ${then} first.`
      : `${herd.name}: no grazing ahead in this plan.`;
  }
  const bare = nothingToGrazeOf(plan, herd.id);
  if (now.kind === 'hay' && now.from === plan.from && bare)
    return `${herd.name}: in ${bare.name}, where there is nothing to graze now. ${OFF_IT} until ${sayDate(now.to)}${next ? `, then ${then}` : ''}.`;
  const where = now.kind === 'hay' ? 'on hay' : `in ${whereOf(plan, now)}`;
  return `${herd.name}: ${where} until ${sayDate(now.to)}${next ? `, then ${then}` : ''}.`;
}

/** Stays, days on hay and mowing that are not over, in their order. */
export const rowsAhead = (plan: PasturePlan, mowing?: DaysOfMowing): SeasonRow[] =>
  seasonRows(plan, mowing).filter(
    ({ kind, to }) => plan.today <= to && kind !== 'shut' && kind !== 'birds',
  );

const isStay = (row: SeasonRow): row is Stay => row.kind === 'graze' || row.kind === 'hay';

const herdOf = (stay: Stay): string => (stay.kind === 'hay' ? stay.herdId : stay.move.herdId);

const whereOf = ({ paddocks }: PasturePlan, stay: Stay): string =>
  stay.kind === 'hay'
    ? 'hay'
    : (paddocks.find(({ id }) => id === stay.move.paddockId)?.name ?? stay.move.paddockId);
