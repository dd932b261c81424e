import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import { calvingSeasons, isInSeason, type CalvingSeason } from '../../pasture/calving-season.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import type { Alarm } from './looked-at.js';

/**
 * Cows that were to calve some days ago, of which nobody told that they did: each with a date of her own by
 * her name, others with their group, until it is told what came of them or the next calving is near.
 */
export const haveTheyCalved = (
  { herds, cows, calvings = [], farm, today }: FarmPicture,
  tables: Tables,
): Alarm[] =>
  herds.flatMap(({ id, name, ...herd }) =>
    calvingSeasons(withNamedCows({ id, name, ...herd }, cows), calvings, today, tables)
      .filter((season) => isAsked(season, today, tables))
      .toSorted((a, b) => a.due.due.localeCompare(b.due.due))
      .map((season): Alarm => {
        const { head, calved, cow, number, due } = season;
        const date = (on: PlainDate): string => formatDate(on, { units: farm.units, today });
        return {
          key: `alarm/calved/${id}/${cow?.id ?? `c${number}`}/${due.due}`,
          ...({ isAlarm: true, level: 'act', place: { kind: 'pasture' } } as const),
          againDays: tables.judgements.alarms.calvingAgainDays.value,
          words: asks(season, date(due.due)),
          text: `${today <= due.late ? `Most calve by ${date(due.late)}.` : `Most had calved by ${date(due.late)}: a cow that has not is overdue. Have her looked at for a calf, and call your veterinarian.`} ${until(head - calved)}`,
          of: name,
          calving: {
            ...{ herdId: id, head: head - calved },
            ...{ classId: season.group.classId, dueOn: due.due },
            ...(cow ? { cowId: cow.id } : {}),
          },
        };
      }),
  );

/** Telling ends the waiting; the grass, the hay and the water are planned without it. */
const until = (head: number): string =>
  head === 1
    ? 'Until it is told she is waited for and watched. What she eats and drinks is planned as with a calf from the day she was due, also once it is told.'
    : 'Until it is told they are waited for and watched. What they eat and drink is planned as with calves from the day they were due, also once it is told.';

/** Of a group of which calves were told the others have time until the last usual day. */
function isAsked(season: CalvingSeason, today: PlainDate, tables: Tables): boolean {
  const { head, calved, due } = season;
  if (head <= calved || !isInSeason(season, today)) return false;
  const waited =
    calved === 0 ? addDays(due.due, tables.judgements.alarms.calvingAskedDays.value) : due.late;
  return waited < today;
}

function asks({ head, calved, cow }: CalvingSeason, due: string): string {
  if (cow) return `did the calf of ${cow.name} come? She was due on ${due}`;
  if (0 < calved)
    return `have the others calved? ${calved} of ${head} ${calved === 1 ? 'has' : 'have'}, due about ${due}`;
  return head === 1
    ? `did the calf come? It was due on ${due}`
    : `did the calves come? ${head} cows were due about ${due}`;
}
