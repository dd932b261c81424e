import type { CheckRow } from './check-row.js';

/**
 * How ours stands to theirs: within what is allowed; beyond it, as the row explains; beyond it
 * without a word; or within it although the row still explains why it is not.
 */
export type Standing = 'holds' | 'disagrees' | 'beyond' | 'explained-in-vain';

/** What a row says of its comparison, however ours is computed. */
export type Compared = Omit<CheckRow, 'by' | 'given'>;

/** A row of checks with what the program computes beside it. */
export interface Check extends Compared {
  /** The heading of its topic. */
  readonly topic: string;
  readonly ours: number;
  /** Ours less theirs, in the unit of the row. */
  readonly deviation: number;
  /** What ours may differ by, in the unit of the row. */
  readonly allowed: number;
  readonly standing: Standing;
}

/** Float noise at the edge of an allowance. */
const NOISE = 1e-9;

/** Holds a row against what the program computes; a value that is no number is beyond. */
export function compare(topic: string, row: Compared, ours: number): Check {
  const deviation = ours - row.theirs;
  const allowed = row.allowedAmount ?? row.allowedShare! * Math.abs(row.theirs);
  const isWithin = Math.abs(deviation) <= allowed + NOISE * Math.max(1, Math.abs(row.theirs));
  const standing = isWithin
    ? row.disagreement === undefined
      ? 'holds'
      : 'explained-in-vain'
    : row.disagreement === undefined || Number.isNaN(ours)
      ? 'beyond'
      : 'disagrees';
  return { ...row, topic, ours, deviation, allowed, standing };
}

/** Whether a row needs nobody to look at it. */
export const isSettled = ({ standing }: Pick<Check, 'standing'>): boolean =>
  standing === 'holds' || standing === 'disagrees';

/** How many rows stand how. */
export function countStandings(checks: readonly Pick<Check, 'standing'>[]) {
  const count = (...standings: Standing[]): number =>
    checks.filter(({ standing }) => standings.includes(standing)).length;
  return {
    held: count('holds'),
    beyond: count('beyond', 'explained-in-vain'),
    disagreeing: count('disagrees'),
  };
}
