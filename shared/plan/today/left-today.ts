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

/** On a day that is asked for more than its hours: what comes first, and what can wait. */
export function firstOfAll(day: Day): string | undefined {
  const { had, used } = day.hours;
  const left = hoursLeft(day);
  // Hours that were worked are there no more.
  const there = Math.max(0, had.value - Math.max(0, used.value - left));
  if (had.value <= 0 || !isWorthTelling(left - there)) return undefined;
  const open = day.jobs.filter(({ state, hasNoHours }) => state === 'open' && !hasNoHours);
  const named = (isFirst: boolean): string =>
    listed(
      open
        .filter(({ forAnimals = false }) => forAnimals === isFirst)
        .map(({ name }) => `“${name}”`),
    );
  const [first, rest] = [named(true), named(false)];
  const round = day.chores.some(({ isDone }) => !isDone) ? 'the round' : '';
  const before = [round, first].filter((each) => each !== '').join(', then ');
  return [
    `That is more than the ${formatHours(there)} there are ${there < had.value ? 'still ' : ''}today.`,
    before === '' ? '' : ` First ${before}: animals depend on it.`,
    rest === '' ? '' : ` What there is no time for then can wait: ${rest}.`,
  ].join('');
}
