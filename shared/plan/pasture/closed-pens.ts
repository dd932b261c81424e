import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { Tables } from '../../tables/tables.js';
import type { PastureRequest } from './pasture-request.js';
import type { Penned } from './penned.js';

/** First day on which cattle may be where birds stood. */
export const cattleFrom = (
  { leaveOn }: Pick<Penned, 'leaveOn'>,
  { pasture }: Pick<Tables, 'pasture'>,
): PlainDate => addDays(leaveOn, pasture.birdsOff.value);

/** Paddocks closed from the day that birds come into them until cattle may be there again. */
export function withPensClosed(
  paddocks: readonly Paddock[],
  { penned = [], tables }: Pick<PastureRequest, 'penned' | 'tables'>,
): readonly Paddock[] {
  if (penned.length === 0) return paddocks;
  return paddocks.map((paddock) => {
    const own = penned.filter(({ paddockId }) => paddockId === paddock.id);
    if (own.length === 0) return paddock;
    const closed = own.map((birds) => ({
      from: birds.from,
      to: addDays(cattleFrom(birds, tables), -1),
      why: 'other' as const,
    }));
    return { ...paddock, closedDays: [...paddock.closedDays, ...closed] };
  });
}
