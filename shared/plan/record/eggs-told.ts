import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { EggsWereCounted, ToldFact } from '../../farm/told-fact.js';
import type { PlannedOfBatch } from './planned-of-batch.js';
import { aliveByTold, type BatchSums } from './batch-sums.js';
import type { RecordLine } from './record-line.js';

/**
 * Eggs that were counted, in all and a hen, beside those planned for the same days. A hen is one that
 * was alive at the end of the days counted. None for birds that are not kept to lay.
 */
export function eggsOf({
  batchId,
  plan,
  facts,
  sums,
  placed,
  arrivedOn,
}: {
  readonly batchId: string;
  readonly plan: PlannedOfBatch;
  readonly facts: readonly ToldFact[];
  readonly sums: BatchSums;
  readonly placed: number;
  readonly arrivedOn: PlainDate;
}): RecordLine[] {
  if (!plan.laying) return [];
  const labels = [
    ['eggs', 'Eggs, of the days counted', 'eggs'],
    ['eggs-per-hen', 'Eggs a hen, of the days counted', 'eggs'],
  ] as const;
  if (sums.counts.length === 0)
    return labels.map(([id, label, unit]) => ({
      id,
      label,
      unit,
      note: 'no eggs were counted',
    }));
  const seriesOf = (id: string): readonly number[] =>
    plan.daily.find((each) => each.id === id)?.values ?? [];
  const [eggs, alive] = [seriesOf('eggs-day'), seriesOf('alive')];
  let [planned, plannedEach, actual, actualEach, days] = [0, 0, 0, 0, 0];
  const aliveOn = aliveByTold(batchId, facts, placed);
  // By their days: sums of parts differ in the last figure with the order in which these were told.
  for (const { on, details } of sums.counts.toSorted(byDay)) {
    const hens = aliveOn(on);
    const last = daysBetween(arrivedOn, on);
    for (let back = 0; back < details.days; back++) {
      const day = last - back;
      planned += eggs[day] ?? 0;
      plannedEach += alive[day] ? (eggs[day] ?? 0) / alive[day] : 0;
    }
    actual += details.eggs;
    actualEach += hens === 0 ? 0 : details.eggs / hens;
    days += details.days;
  }
  const note = `${days} ${days === 1 ? 'day' : 'days'} counted`;
  const told = [
    [Math.round(planned), actual],
    [plannedEach, actualEach],
  ] as const;
  return labels.map(([id, label, unit], k) => ({
    id,
    label,
    unit,
    planned: told[k]![0],
    actual: told[k]![1],
    note,
    days,
  }));
}

const byDay = (a: EggsWereCounted, b: EggsWereCounted): number =>
  a.on.localeCompare(b.on) || a.details.days - b.details.days || a.details.eggs - b.details.eggs;
