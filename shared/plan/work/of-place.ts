import type { OwnJob } from '../../farm/job.js';
import type { KeyDate } from '../tasks/event.js';

/** How ids of key dates begin that belong to the place. */
export const OF_PLACE = 'event/place/';
const FROSTS = [`${OF_PLACE}last-frost-`, `${OF_PLACE}first-frost-`];

/** Whether a key date belongs to the place, and not to a batch or herd. */
export const isOfPlace = ({ id }: Pick<KeyDate, 'id'>): boolean => id.startsWith(OF_PLACE);

/** Whether it is one of garden or hives, which not every household has an eye on. */
export const isOfGarden = (event: Pick<KeyDate, 'id'>): boolean =>
  isOfPlace(event) && !FROSTS.some((start) => event.id.startsWith(start));

const OF_HIVES = [`${OF_PLACE}hives-open-`, `${OF_PLACE}swarming-`];
const GARDEN_SETS: ReadonlySet<string | undefined> = new Set([
  'garden-beds',
  'garden-fall',
  'cover-crop',
  'orchard',
  'berries',
]);
const HIVE_SETS: ReadonlySet<string | undefined> = new Set(['hives', 'hives-fall']);
const SPEAKS_OF_HIVES = /\b(bees?|hives?|swarms?)\b/i;
const SPEAKS_OF_GARDEN = /\b(garden|beds?|sow|seeds?|plant|orchard|prune|berries)\b/i;

/** Whether there are bees: no animal of the farm stands for them, but their work does. */
export const hasHives = (jobs: readonly OwnJob[]): boolean =>
  jobs.some(({ setId }) => HIVE_SETS.has(setId));

/**
 * Whether a household has an eye on a date of garden or hives: where a job of its own is tied to
 * it, comes from a set of hives or of the garden, or speaks of them.
 */
export function isLookedFor(event: Pick<KeyDate, 'id'>, jobs: readonly OwnJob[]): boolean {
  const isOfHives = OF_HIVES.some((start) => event.id.startsWith(start));
  const speaks = isOfHives ? SPEAKS_OF_HIVES : SPEAKS_OF_GARDEN;
  return jobs.some(
    ({ tiedTo, setId, name }) =>
      tiedTo?.eventId === event.id ||
      (isOfHives ? HIVE_SETS : GARDEN_SETS).has(setId) ||
      speaks.test(name),
  );
}
