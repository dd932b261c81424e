import { useRef } from 'react';
import type { PlannedJob } from '../../../shared/plan/work/planned-work.js';
import { useWorkMarks } from './work-marks.js';

/** Work of a list: that of which something was said here stays in place, whatever the plan does with it. */
export function useKeptJobs(jobs: readonly PlannedJob[]): readonly PlannedJob[] {
  const { said } = useWorkMarks();
  const shown = useRef<readonly PlannedJob[]>([]);
  const now = new Map(jobs.map((job) => [job.key, job]));
  const kept = shown.current.filter(({ key }) => said.has(key) || now.has(key));
  const known = new Set(kept.map(({ key }) => key));
  const list = [
    ...kept.map((job) => (said.has(job.key) ? inPlace(job, now.get(job.key)) : now.get(job.key)!)),
    ...jobs.filter(({ key }) => !known.has(key)),
  ];
  // A list that nothing was said of stands in the order of its plan.
  shown.current = list.some(({ key }) => said.has(key)) ? list : jobs;
  return shown.current;
}

/** Work as the plan has it now, on the days it stood under before; as it was when it is no longer planned. */
function inPlace(before: PlannedJob, now: PlannedJob | undefined): PlannedJob {
  if (!now) return before;
  const pieces = before.pieces.map((piece, _, { length }) => ({
    ...(now.pieces.find(({ date }) => date === piece.date) ?? piece),
    ...(length === 1 ? { hours: now.hours } : {}),
  }));
  return { ...now, pieces, why: before.why };
}
