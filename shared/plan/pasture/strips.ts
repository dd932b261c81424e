import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import { placeNow } from './moves-assumed.js';
import type { PasturePlan } from './pasture-plan.js';

/** A herd comes onto fresh grass: into a paddock, or onto its next strip. */
export interface FreshGrass {
  readonly date: PlainDate;
  readonly paddock: string;
  /** Which strip of the stay it is, the first on the day they come, and how many there are. */
  readonly strip: number;
  readonly strips: number;
}

/**
 * Days on which a herd is given fresh grass, as the grass plan has them. Strips of the stay they are
 * in count from its first day, so that a stay that goes on as planned moves nobody’s morning.
 */
export function freshGrassOf(
  herd: Pick<Herd, 'id' | 'inPaddockId' | 'inSince'>,
  { moves, paddocks, assumedMoves }: Pick<PasturePlan, 'moves' | 'paddocks' | 'assumedMoves'>,
  today: PlainDate,
): FreshGrass[] {
  const { id } = herd;
  const { inPaddockId, inSince } = placeNow(herd, assumedMoves);
  return moves
    .filter(({ herdId }) => herdId === id)
    .flatMap(({ from, to, paddockId, longestDays }) => {
      const isGoingOn = paddockId === inPaddockId && from <= today;
      const first = isGoingOn ? (inSince ?? from) : from;
      const strips = Math.ceil((daysBetween(first, to) + 1) / longestDays);
      const paddock = paddocks.find((each) => each.id === paddockId)?.name ?? paddockId;
      return Array.from({ length: strips }, (_, k): FreshGrass => {
        const date = addDays(first, k * longestDays);
        return { date, paddock, strip: k + 1, strips };
      });
    });
}
