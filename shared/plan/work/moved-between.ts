import type { WorkPlan } from './planned-work.js';
import type { WorkChange } from './work-changes.js';

/** Work whose first day is another one in a later plan of the same household, by its new day. */
export function movedBetween(
  before: Pick<WorkPlan, 'jobs'>,
  after: Pick<WorkPlan, 'jobs'>,
): WorkChange[] {
  const was = new Map(before.jobs.map((job) => [job.key, job.pieces[0]?.date]));
  return after.jobs
    .flatMap(({ key, name, belongsTo, pieces, why }): WorkChange[] => {
      if (!was.has(key)) return [];
      const [from, to] = [was.get(key), pieces[0]?.date];
      if (from === to) return [];
      return [
        {
          ...{ key, name, why },
          ...(belongsTo ? { belongsTo: belongsTo.name } : {}),
          kind: to === undefined ? 'fits-no-more' : from === undefined ? 'fits-now' : 'moved',
          ...(from === undefined ? {} : { from }),
          ...(to === undefined ? {} : { to }),
        },
      ];
    })
    .sort((a, b) => ((a.to ?? a.from!) < (b.to ?? b.from!) ? -1 : 1));
}
