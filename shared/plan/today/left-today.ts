import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import { isWorthTelling } from '../work/worth-telling.js';
import type { TickedToday } from './today.js';

type Day = Pick<TickedToday, 'hours' | 'jobs' | 'chores'>;

/** Hours still to be worked today: of the round what is not told done, and of the work what is open. */
export function hoursLeft({ hours, chores }: Day): number {
  // Read before a program of today knew of it, a day in the pocket says only what all of it takes.
  const { left = hours.used.value, notCounted = [] } = hours;
  const done = chores
    .filter(({ isDone, person = '' }) => isDone && !notCounted.includes(person))
    .reduce((sum, chore) => sum + chore.hours, 0);
  return Math.max(0, left - done);
}

/** On a day that is asked for more than its hours: that animals come first, and what can wait. */
export function firstOfAll(day: Day): string | undefined {
  const { had, used } = day.hours;
  const left = hoursLeft(day);
  // Hours that were worked are there no more.
  const there = Math.max(0, had.value - Math.max(0, used.value - left));
  if (had.value <= 0 || !isWorthTelling(left - there)) return undefined;
  const wait = day.jobs
    .filter(({ state, hasNoHours, forAnimals }) => state === 'open' && !hasNoHours && !forAnimals)
    .map(({ name }) => `“${name}”`);
  const much = `That is more than the ${formatHours(there)} there are ${there < had.value ? 'still ' : ''}today.`;
  if (wait.length === 0) return `${much} Animals depend on all of it: ask somebody to help.`;
  const round = day.chores.some(({ isDone }) => !isDone) ? 'the round and ' : '';
  return `${much} First ${round}all that animals depend on; what there is no time for then can wait: ${listed(wait)}.`;
}
