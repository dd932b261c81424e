import { suitsOn } from '../../schedule/work-reasons.js';
import { WorkDays } from '../../schedule/work-days.js';
import type { Worker, WorkJob } from '../../schedule/work.js';
import type { WorkTable } from '../../tables/work-table.js';
import type { WorkNeed } from './work-need.js';

/**
 * Lets short work, else done in one go, be spread as long work is where none of its days has the
 * time for it in one go: who has half an hour of an evening makes the ice on two.
 */
export function splitWhereShort(
  jobs: readonly WorkJob[],
  needs: readonly WorkNeed[],
  workers: readonly Worker[],
  usual: WorkTable['smallestPieceHours'],
): WorkJob[] {
  const smallest = Math.round(60 * usual.value);
  const days = workers[0]?.minutes.length ?? 0;
  let free: WorkDays | undefined;
  return jobs.map((job, i) => {
    const { canBeSpread, isOfOneDay } = needs[i]!;
    const { smallestPieceMinutes, minutes, pinned, fromDay, untilDay } = job;
    if (
      !canBeSpread ||
      isOfOneDay ||
      pinned ||
      smallestPieceMinutes !== undefined ||
      minutes <= smallest
    )
      return job;
    free ??= new WorkDays({ days, workers, jobs: [] });
    const last = Math.min(untilDay, days - 1);
    for (let day = Math.max(0, fromDay); day <= last; day++)
      if (suitsOn(job, day) && minutes <= free.together(job, day)) return job;
    return { ...job, smallestPieceMinutes: smallest };
  });
}
