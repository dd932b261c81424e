import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Farm } from '../../farm/farm.js';
import { comesByPost } from '../../farm/batch-origin.js';
import type { Batch } from '../../farm/batch.js';
import { formatDate } from '../../units/dates.js';

interface Late {
  /** The batch as it was to come until now. */
  readonly was: Pick<Batch, 'arrivalDate' | 'hatchToArrivalDays' | 'origin'>;
  readonly to: PlainDate;
  readonly today: PlainDate;
}

/** Young birds must be in the hands of whoever raises them within 72 hours of hatch (USPS_CHICKS). */
const YOLK_DAYS = 3;

/**
 * What to do for young birds that may be in the post already and come later than planned: what they
 * need now stands before dates of months ahead. Nothing where they are fetched, not hatched yet by
 * the plan, or come no later. But for the 72 hours common practice, no source.
 *
 * @returns sentences, in the order in which they are done
 */
export function boxLate({ was, to, today }: Late, { units }: Pick<Farm, 'units'>): string[] {
  const hatched = addDays(was.arrivalDate, -was.hatchToArrivalDays);
  if (!comesByPost(was) || to <= was.arrivalDate || today < hatched) return [];
  const say = (on: PlainDate): string => formatDate(on, { units, today });
  const limit = addDays(hatched, YOLK_DAYS);
  return [
    'Ask the sender today: are they hatched and sent? If not, only dates change.',
    to <= limit
      ? `If they are in the post: hatched on ${say(hatched)}, they live on their yolk until ${say(limit)} and no longer. Ask the post office early on ${say(to)}, and fetch the box yourself.`
      : `If they are in the post: hatched on ${say(hatched)}, they live on their yolk until ${say(limit)}, and ${say(to)} is too late. Have the post office look for the box now, and fetch it yourself.`,
    'Keep the brooder warm until they come.',
    'When they come: water first, each beak dipped in it, then feed. Look again every 2 to 3 hours.',
  ];
}
