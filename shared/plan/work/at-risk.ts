import type { PlainDate } from '../../calendar/plain-date.js';

/** Work as far as it is asked what hangs on it. */
export interface MaybeRisky {
  /** Batch or herd it is done for; the household's own has none. */
  readonly of?: string | undefined;
  readonly ifLate?: string | undefined;
  /** The last day on which it is in time. */
  readonly latest?: PlainDate | undefined;
}

/** What is about to be said of it: another day, or not at all. */
interface Said {
  readonly notBefore?: PlainDate;
  readonly struckOut?: boolean;
}

/**
 * What it would mean for animals if work for them was not done, or too late.
 *
 * @returns nothing for work that can wait so long, and for the household's own
 */
export function atRisk(
  { of, ifLate, latest }: MaybeRisky,
  { notBefore, struckOut = false }: Said,
): string | undefined {
  if (of === undefined || ifLate === undefined) return undefined;
  const isLate = notBefore !== undefined && latest !== undefined && latest < notBefore;
  return struckOut || isLate ? `${of}: if not done in time, ${lower(ifLate)}.` : undefined;
}

/** Work that may be struck out in one go: what hangs on the rest is asked of each by itself. */
export const struckTogether = <Job extends MaybeRisky>(jobs: readonly Job[]): Job[] =>
  jobs.filter((job) => atRisk(job, { struckOut: true }) === undefined);

const lower = (words: string): string =>
  `${words.charAt(0).toLowerCase()}${words.slice(1)}`.replace(/\.$/, '');
