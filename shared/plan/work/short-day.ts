import type { PlainDate } from '../../calendar/plain-date.js';

/** A day whose own work lacks hours, and how many more are enough for all of it. */
export interface ShortDay {
  readonly date: PlainDate;
  /** The work that lacks them, and the batches and herds it is for. */
  readonly keys: readonly string[];
  readonly of: readonly string[];
  /** What to find for what, in a few words. */
  readonly words: string;
  /** The same with its day and what else would do: a sentence. */
  readonly said: string;
}

/** What a day lacks, and what else would do: its work on another day. */
export function waysOfDay(
  { said, keys }: ShortDay,
  jobs: readonly { readonly key: string; readonly waysToFit: readonly string[] }[],
): string[] {
  const ways = jobs.flatMap(({ key, waysToFit }) => (keys.includes(key) ? waysToFit : []));
  return [said, ...new Set(ways)];
}
