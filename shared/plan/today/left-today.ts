import { formatHours } from '../../units/format.js';
import { listed } from '../../units/listed.js';
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
  const { had } = day.hours;
  if (had.value <= 0 || hoursLeft(day) <= had.value + SLACK_H) return undefined;
  const wait = day.jobs
    .filter(({ state, hasNoHours, forAnimals }) => state === 'open' && !hasNoHours && !forAnimals)
    .map(({ name }) => `“${name}”`);
  const much = `That is more than the ${formatHours(had.value)} there are today.`;
  if (wait.length === 0) return `${much} Animals depend on all of it: ask somebody to help.`;
  return `${much} First the round and all that animals depend on; what there is no time for then can wait: ${listed(wait)}.`;
}

/** Nobody puts work off for a quarter of an hour. */
const SLACK_H = 0.25;
