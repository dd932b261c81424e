import type { KeyDate } from '../tasks/event.js';

/** How ids of key dates begin that belong to the place. */
export const OF_PLACE = 'event/place/';
const FROSTS = [`${OF_PLACE}last-frost-`, `${OF_PLACE}first-frost-`];

/** Whether a key date belongs to the place, and not to a batch or herd. */
export const isOfPlace = ({ id }: Pick<KeyDate, 'id'>): boolean => id.startsWith(OF_PLACE);

/** Whether it is one of garden or hives, which not every household has an eye on. */
export const isOfGarden = (event: Pick<KeyDate, 'id'>): boolean =>
  isOfPlace(event) && !FROSTS.some((start) => event.id.startsWith(start));
