import type { Round } from '../../tables/task-template.js';

const WORDS: Record<Round, string> = {
  morning: 'morning',
  noon: 'noon',
  evening: 'evening',
  night: 'last thing at night',
};

/** Rounds of the day in words: “morning, noon and evening”. */
export function roundsSaid(rounds: readonly Round[]): string {
  const words = rounds.map((round) => WORDS[round]);
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
