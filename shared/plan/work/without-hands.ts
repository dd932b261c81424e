import { isGrownUp } from '../../farm/who-is-there.js';
import { formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { ARRANGING } from '../past-tasks.js';
import type { ShortDay } from './short-day.js';
import type { WorkNeed } from './work-need.js';
import type { WorkRequest } from './work-request.js';

/**
 * Days on which birds are to be processed that nobody has the hours for: how much work that is, who
 * lacks the hours, and what would do. Said until somebody is found.
 *
 * @param needs work that is open
 */
export function daysWithoutHands(
  { farm, people, today, work }: WorkRequest,
  needs: readonly WorkNeed[],
): ShortDay[] {
  return work.flatMap(({ id, name, birds }): ShortDay[] => {
    const leaving = birds?.leaving;
    const { birdsWithoutHands: left, hoursWithoutHands = 0 } = leaving ?? {};
    const arranging = needs.find(
      ({ key, isOver }) => !isOver && key.startsWith(`batch/${id}/${ARRANGING}`),
    );
    if (!leaving || left === undefined || !arranging) return [];
    const date = String(leaving.on.value);
    const names = listed(people.filter(isGrownUp).map((person) => person.name));
    const of = names === '' ? '' : ` of ${names}`;
    const hours = `${formatHours(hoursWithoutHands)} of work`;
    const ways = leaving.processingWays.filter(({ chosenBy }) => chosenBy !== undefined);
    const whatWouldDo =
      ways.length === 0
        ? ''
        : ` What would do: ${ways.map(({ words }) => `${words}.`).join(' Or: ')}`;
    const on = formatDate(date, { units: farm.units, today });
    return [
      {
        date,
        keys: [arranging.key],
        of: [name],
        words: `find hands for ${left} birds, ${hours}`,
        said: `On ${on} ${left} birds have nobody to process them: that is ${hours}, and the hours${of} on that day and the days before it are too few.${whatWouldDo}`,
      },
    ];
  });
}
