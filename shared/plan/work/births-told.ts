import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { calvingSeasons, type CalvingSeason } from '../../pasture/calving-season.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import type { Task } from '../tasks/task.js';

/**
 * Tasks of a herd without those of a calving of which nothing is left: all its calves were told some
 * time ago, or its cows are not in calf. What was ticked off or struck out stays to be seen. The plan of the pasture knows nothing
 * of births, so that each of them does not plan the grass anew.
 */
export function withoutBirthsTold(
  tasks: readonly Task[],
  herd: Herd,
  {
    calvings = [],
    cows,
    progress,
    today,
  }: Pick<FarmPicture, 'calvings' | 'cows' | 'progress' | 'today'>,
  tables: Tables,
): readonly Task[] {
  const born = calvingSeasons(withNamedCows(herd, cows), calvings, today, tables).filter(
    ({ told, calved, head }) => 0 < told.length && head <= calved,
  );
  if (born.length === 0) return tasks;
  const ofBirthDays = tables.judgements.grass.birthWorkDays.value;
  const settled = new Set(
    progress
      .filter(({ doneOn, struckOut }) => doneOn !== undefined || struckOut === true)
      .map(({ key }) => key),
  );
  return tasks.filter(
    (task) =>
      task.event !== 'calving' ||
      settled.has(`herd/${herd.id}/${task.id}`) ||
      born.every((season) => !isOver(task, season, { herdId: herd.id, today, ofBirthDays })),
  );
}

function isOver(
  { id, offsetDays }: Task,
  season: CalvingSeason,
  {
    herdId,
    today,
    ofBirthDays,
  }: { readonly herdId: string; readonly today: PlainDate; readonly ofBirthDays: number },
): boolean {
  const owner = season.cow ? `cow-${season.cow.id}` : `${herdId}.c${season.number - 1}`;
  if (!id.startsWith(`${owner}.`)) return false;
  // Of cows that calve none after all nothing is left, not the weaning either.
  if (season.head === 0) return true;
  // The watch, the birth and the navel are over by then; what comes later is for the pairs.
  if (ofBirthDays < offsetDays) return false;
  const last = season.told.reduce((latest, { date }) => (latest < date ? date : latest), '');
  return offsetDays < 0 || addDays(last, offsetDays) < today;
}
