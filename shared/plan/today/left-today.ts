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

/** On a day that is asked for more than its hours: what comes first, and what can wait. */
export function firstOfAll(day: Day): string | undefined {
  const { had } = day.hours;
  if (had.value <= 0 || hoursLeft(day) <= had.value + SLACK_H) return undefined;
  const open = day.jobs.filter(({ state, hasNoHours }) => state === 'open' && !hasNoHours);
  const named = (isFirst: boolean): string =>
    listed(
      open
        .filter(({ forAnimals = false }) => forAnimals === isFirst)
        .map(({ name }) => `“${name}”`),
    );
  const [first, rest] = [named(true), named(false)];
  const round = 0 < day.chores.length ? 'the round' : '';
  const before = [round, first].filter((each) => each !== '').join(', then ');
  return [
    `That is more than the ${formatHours(had.value)} there are today.`,
    before === '' ? '' : ` First ${before}: animals depend on it.`,
    rest === '' ? '' : ` What there is no time for then can wait: ${rest}.`,
  ].join('');
}

/** Nobody puts work off for a quarter of an hour. */
const SLACK_H = 0.25;
