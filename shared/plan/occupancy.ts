import { addDays } from '../calendar/plain-date.js';
import type { Occupancy } from '../farm/batch.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';

/** What a batch holds on to, and when: its brooder and its pens or coop. */
export function occupanciesOf(context: PlanContext): Occupancy[] {
  const { batch, brooderDays, moveOutDay, life, dateOf } = context;
  const { daysBefore, daysAfter } = context.tables.judgements.birds;
  const result: Occupancy[] = [];
  const hold = (facilityId: string | undefined, from: string, to: string): void => {
    if (facilityId !== undefined) result.push({ batchName: batch.name, facilityId, from, to });
  };
  hold(
    batch.brooderId,
    addDays(batch.arrivalDate, -daysBefore.value),
    addDays(dateOf(brooderDays), daysAfter.value),
  );
  if (moveOutDay !== undefined) {
    const home = batch.purpose === 'meat' ? (batch.penId ?? batch.coopId) : batch.coopId;
    hold(home, dateOf(moveOutDay), dateOf(life.days - 1));
  }
  return result;
}

export const overlaps = (a: Occupancy, b: Occupancy): boolean =>
  a.facilityId === b.facilityId && a.from <= b.to && b.from <= a.to;

/** One warning for each place that two batches want on the same days. */
export function collisions(
  mine: readonly Occupancy[],
  { occupied, facilities, say }: Pick<PlanContext, 'occupied' | 'facilities' | 'say'>,
): PlanIssue[] {
  const days = ({ from, to }: Occupancy): string => `${say(from, 'date')} to ${say(to, 'date')}`;
  return mine.flatMap((own) =>
    occupied
      .filter((other) => overlaps(own, other))
      .map((other) => {
        const name = facilities.find((f) => f.id === own.facilityId)?.name ?? 'A place';
        return issue(
          'act',
          'place-taken',
          `${name} is wanted from ${days(own)}, but ${other.batchName} holds it from ${days(other)}, cleaning days counted. Move one of the two batches.`,
        );
      }),
  );
}
