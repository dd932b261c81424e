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
