import { useRef } from 'react';
import type { PlannedJob } from '../../../shared/plan/work/work-plan.js';
import { useWorkMarks } from './work-marks.js';

/** Work of a list as it was when something was said of it here, so that its row stays in place. */
export function useKeptJobs(jobs: readonly PlannedJob[]): readonly PlannedJob[] {
  const { said } = useWorkMarks();
  const shown = useRef<readonly PlannedJob[]>([]);
  const now = new Map(jobs.map((job) => [job.key, job]));
  const kept = shown.current.filter(({ key }) => said.has(key) || now.has(key));
  const known = new Set(kept.map(({ key }) => key));
  const list = [
    ...kept.map((job) => (said.has(job.key) ? job : now.get(job.key)!)),
    ...jobs.filter(({ key }) => !known.has(key)),
  ];
  // A list that nothing was said of stands in the order of its plan.
  shown.current = list.some(({ key }) => said.has(key)) ? list : jobs;
  return shown.current;
}
