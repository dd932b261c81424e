import type { PlainDate } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import type { PlanContext } from '../context.js';

/** Of a batch's context what no neighbor of it changes. */
export type OwnLife = Pick<PlanContext, 'batch' | 'life' | 'moveOutDay' | 'dateOf' | 'tables'>;

/** Birds from their move outdoors to the day they leave, and what they drop in a day. */
export interface BirdsOutdoors {
  readonly name: string;
  readonly from: PlainDate;
  readonly leaveOn: PlainDate;
  readonly days: number;
  readonly nitrogenKgPerDay: number;
  readonly phosphorusKgPerDay: number;
  /** What these rest on. */
  readonly rows: readonly Sourced[];
}

/** Undefined when they never move out. */
export function birdsOutdoors({
  batch,
  life,
  moveOutDay,
  dateOf,
  tables,
}: OwnLife): BirdsOutdoors | undefined {
  if (moveOutDay === undefined) return undefined;
  const last = life.days - 1;
  const days = last - moveOutDay;
  if (days < 1) return undefined;
  const manure = tables.manure[batch.purpose];
  let liveKgDays = 0;
  for (let i = moveOutDay; i < last; i++) liveKgDays += life.aliveAll[i]! * life.meanWeightKg[i]!;
  const meanLiveKg = liveKgDays / days;
  return {
    name: batch.name,
    from: dateOf(moveOutDay),
    leaveOn: dateOf(last),
    days,
    nitrogenKgPerDay: meanLiveKg * manure.nKgPerDayPerKgLive,
    phosphorusKgPerDay: meanLiveKg * manure.pKgPerDayPerKgLive,
    rows: [manure, life.losses, ...life.weightRows],
  };
}
