import { useQuery } from '@tanstack/react-query';
import type { OwnJob, WorkMark } from '../../../shared/farm/job.js';
import type { SeasonPlan } from '../../../shared/plan/season/season-plan.js';
import { getJson, putJson } from './client.js';
import { useChange } from './queries.js';

export const useWork = (farmId: string) =>
  useQuery({
    queryKey: ['farm', farmId, '/work'],
    queryFn: () => getJson<SeasonPlan>(`/farms/${farmId}/work`),
  });
export const useJobs = (farmId: string) =>
  useQuery({
    queryKey: ['farm', farmId, '/jobs'],
    queryFn: () => getJson<OwnJob[]>(`/farms/${farmId}/jobs`),
  });
/** Ticks work off, puts it off, or opens it again. */
export const useMark = (farmId: string) =>
  useChange((mark: WorkMark) => putJson<WorkMark>(`/farms/${farmId}/work/mark`, mark));
