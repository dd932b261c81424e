import type { PlainDate } from '../calendar/plain-date.js';
import type { Person } from './farm.js';
import type { Handover } from './handover.js';

/** Whether somebody is a grown-up of the household: no child, and nobody who only looks in. */
export const isGrownUp = ({ isChild, looksIn }: Pick<Person, 'isChild' | 'looksIn'>): boolean =>
  !isChild && looksIn === undefined;

/** The days away of the household in which a date lies. */
export const handoverOn = <T extends Pick<Handover, 'from' | 'to'>>(
  handovers: readonly T[],
  date: PlainDate,
): T | undefined => handovers.find(({ from, to }) => from <= date && date <= to);

/**
 * Whether one of the household is on the farm on a date, if only for the night: whoever is in charge
 * is; the others as the hand-over and their own days away say.
 */
export function isAtHome(
  { id, away }: Pick<Person, 'id' | 'away'>,
  date: PlainDate,
  handovers: readonly Pick<Handover, 'from' | 'to' | 'personId' | 'awayIds'>[],
): boolean {
  const handover = handoverOn(handovers, date);
  if (handover?.personId === id) return true;
  if (handover && (handover.awayIds?.includes(id) ?? true)) return false;
  return !away.some(({ from, to }) => from <= date && date <= to);
}
