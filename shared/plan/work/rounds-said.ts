import { formatHours } from '../../units/format.js';
import type { Round } from '../../tables/task-template.js';
import { listed } from '../../units/listed.js';

const WORDS: Record<Round, string> = {
  morning: 'morning',
  noon: 'noon',
  evening: 'evening',
  night: 'last thing at night',
};

/** Rounds of the day in words: “morning, noon and evening”. */
export const roundsSaid = (rounds: readonly Round[]): string =>
  listed(rounds.map((round) => WORDS[round]));

/** How long a chore takes: on its day, or with each animal where it comes when one does. */
export const choreHoursSaid = ({
  hours,
  hoursEach,
}: {
  readonly hours: number;
  readonly hoursEach?: number;
}): string =>
  hoursEach === undefined ? formatHours(hours) : `${formatHours(hoursEach)} each, as they come`;
