import type { FeedPhase } from '../tables/bird-tables.js';
import type { Life } from './life.js';

export interface DatedPhase {
  readonly phase: FeedPhase;
  readonly fromAgeDays: number;
  /** First age that no longer gets it. */
  readonly toAgeDays: number;
}

/** Feed phases of a batch with their ages, cut to the days it lives here. */
export function phasesOf(life: Life): DatedPhase[] {
  const end = life.lastAgeDays + (life.layCurve ? 1 : 0);
  const starts = life.program.phases.map((phase) =>
    phase.fromDay === 'first-egg' ? (life.firstEggAgeDays ?? Infinity) : phase.fromDay,
  );
  return life.program.phases.flatMap((phase, k) => {
    const fromAgeDays = Math.max(starts[k]!, life.arrivalAgeDays);
    const toAgeDays = Math.min(starts[k + 1] ?? Infinity, end);
    return fromAgeDays < toAgeDays ? [{ phase, fromAgeDays, toAgeDays }] : [];
  });
}
