import { useMutation, useQuery } from '@tanstack/react-query';
import type { Handover } from '../../../shared/farm/handover.js';
import type { OwnJob } from '../../../shared/farm/job.js';
import type { KeptJob } from '../../../shared/farm/resting-jobs.js';
import type { SitterSheet } from '../../../shared/plan/handover/sitter-sheet.js';
import type { WorkComparison } from '../../../shared/plan/work/compare-plans.js';
import type { CareGap } from '../../../shared/plan/work/care-gaps.js';
import type { WorkChange } from '../../../shared/plan/work/work-changes.js';
import type { WorkOutlook } from '../../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { YearPlan } from '../../../shared/plan/year/year-plan.js';
import type { DailyWeather } from '../../../shared/weather/climate.js';
import type { SaidOfWork } from '../kept/entry.js';
import { getJson, postJson, putJson, remove } from './client.js';
import { keptQuery } from './kept-reads.js';
import { ofFarm, useChange } from './queries.js';

export const useWork = (farmId: string, isAsked = true) =>
  useQuery({ ...ofFarm<WorkPlan>(farmId, '/work'), enabled: isAsked });
export const useYear = (farmId: string) => useQuery(ofFarm<YearPlan>(farmId, '/year'));
/** Leaving the screen ends it. */
export const useOutlook = (farmId: string) =>
  useQuery({
    ...ofFarm<WorkOutlook>(farmId, OUTLOOK),
    ...keptQuery<WorkOutlook>(`/farms/${farmId}${OUTLOOK}`, { endsWithScreen: true }),
  });
const OUTLOOK = '/work/outlook';
/** How far it is, asked again and again. */
export const useOutlookProgress = (farmId: string) =>
  useQuery({
    queryKey: ['farm', farmId, `${OUTLOOK}/progress`],
    queryFn: () => getJson<{ played: number }>(`/farms/${farmId}${OUTLOOK}/progress`),
    refetchInterval: 500,
    gcTime: 0,
  });
export const useJobs = (farmId: string) => useQuery(ofFarm<KeptJob[]>(farmId, '/jobs'));
export const useHandovers = (farmId: string) => useQuery(ofFarm<Handover[]>(farmId, '/handovers'));
export const useSheet = (farmId: string, id: string) =>
  useQuery(ofFarm<SitterSheet>(farmId, `/handovers/${id}/sheet`));

/** What is said of a piece of work, or that the last of it is taken back. */
export type Said = SaidOfWork;

/** Replaces the forecast by one that is typed. */
export const useTypeForecast = (farmId: string) =>
  useChange((days: readonly DailyWeather[]) =>
    putJson<unknown>(`/farms/${farmId}/weather/forecast`, { days }),
  );
/** What another arrival date would free or break; changes nothing. */
export const useArrivalMove = (farmId: string) =>
  useMutation({
    mutationFn: (move: { batchId: string; arrivalDate: string }) =>
      postJson<WorkComparison>(`/farms/${farmId}/work/if-arrival-moves`, move),
  });
/** What it would move when people are away from today on; changes nothing. */
export const useWorkIfAway = (farmId: string) =>
  useMutation({
    mutationFn: (away: { awayIds: readonly string[]; to: string }) =>
      postJson<WorkComparison>(`/farms/${farmId}/work/if-away`, away),
  });
/** The same, asked for as a date is tried: an answer is kept for the date that comes back. */
export const useWorkIfMoved = (
  farmId: string,
  move: { readonly batchId: string; readonly arrivalDate: string },
) =>
  useQuery({
    queryKey: ['farm', farmId, 'if-arrival-moves', move.batchId, move.arrivalDate],
    queryFn: () => postJson<WorkComparison>(`/farms/${farmId}/work/if-arrival-moves`, move),
    retry: false,
  });
/** A sheet before it is saved, and what it would move. */
export interface SheetPreview {
  readonly sheet: SitterSheet;
  readonly moved: readonly WorkChange[];
  readonly careGaps: readonly CareGap[];
}

/** The sheet of days before they are handed over; changes nothing. */
export const useSheetPreview = (farmId: string) =>
  useMutation({
    mutationFn: (handover: Partial<Handover>) =>
      postJson<SheetPreview>(`/farms/${farmId}/handovers/preview`, handover),
  });
export const useTakeSet = (farmId: string) =>
  useChange(
    ({ setId, ...taken }: { setId: string; anchorOn: string; count: number; eventId?: string }) =>
      postJson<OwnJob[]>(`/farms/${farmId}/jobs/sets/${setId}`, taken),
  );
export const useLeaveSet = (farmId: string) =>
  useChange((setId: string) => remove(`/farms/${farmId}/jobs/sets/${setId}`));
