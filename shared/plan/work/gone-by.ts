import { timeOfSet } from '../../farm/missed-times.js';
import { timeOf } from '../../farm/repeated-jobs.js';
import type { PlannedJob } from './planned-work.js';
import { LAST_DAY_IS_OVER } from './work-words.js';

/** Whether the last day of work is over and nobody said what became of it: it asks for no hours any more. */
export const isGoneBy = ({ pieces, why }: Pick<PlannedJob, 'pieces' | 'why'>): boolean =>
  pieces.length === 0 && why === LAST_DAY_IS_OVER;

/** Such work by name, several times of one job in one: “Weed and water (3 of 8)”. */
export function goneByInWords(
  jobs: readonly Pick<PlannedJob, 'key' | 'name' | 'belongsTo'>[],
): string {
  const lines = new Map<string, { readonly of: string; count: number }>();
  for (const { key, name, belongsTo } of jobs) {
    const line = timeOf(key)?.job ?? timeOfSet(name)?.work ?? key;
    const known = lines.get(line);
    if (known) known.count++;
    else lines.set(line, { of: `${name}${belongsTo ? `, ${belongsTo.name}` : ''}`, count: 1 });
  }
  return [...lines.values()]
    .map(({ of, count }) => {
      const time = timeOfSet(of);
      if (count === 1) return of;
      return time ? `${time.work} (${count} of ${time.times})` : `${of} (${count} times)`;
    })
    .join('; ');
}
