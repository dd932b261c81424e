import type { Batch } from '../farm/batch.js';
import { phasesOf, type DatedPhase } from './feed-phases.js';
import type { Life } from './life.js';
import type { PlanRequest } from './request.js';

/** A last feed that is fed for a few days only, and whether the household leaves it out. */
export interface ShortLastFeed {
  readonly name: string;
  readonly before: string;
  readonly days: number;
  readonly isLeftOut: boolean;
}

/**
 * The feeds of a batch. A household may stay on the one before where the last would be fed for a
 * few days only.
 */
export function phasesFed(request: PlanRequest, life: Life): DatedPhase[] {
  const phases = phasesOf(life);
  if (life.isStarted)
    return withoutShort(phases, request.tables.judgements.birds.fewFeedDays.value);
  if (!request.batch.skipsLastFeed || !shortLastFeed(request, phases)) return phases;
  const { toAgeDays } = phases.at(-1)!;
  return phases.slice(0, -1).with(-1, { ...phases.at(-2)!, toAgeDays });
}

/**
 * Grown pullets come between feeds: one that would be fed for a few days only is not bought, and
 * they stay on the one before, or begin with the next.
 */
function withoutShort(phases: readonly DatedPhase[], fewDays: number): DatedPhase[] {
  const kept = phases.filter(
    ({ fromAgeDays, toAgeDays }, k) => k === phases.length - 1 || fewDays < toAgeDays - fromAgeDays,
  );
  return kept.map((phase, k) => ({
    ...phase,
    fromAgeDays: k === 0 ? phases[0]!.fromAgeDays : phase.fromAgeDays,
    toAgeDays: kept[k + 1]?.fromAgeDays ?? phase.toAgeDays,
  }));
}

/**
 * The last feed of meat birds, where it is fed for a few days only. None of a medicated feed before
 * it: the birds have to come off that one.
 */
function shortLastFeed(
  { batch, tables }: Pick<PlanRequest, 'batch' | 'tables'>,
  phases: readonly DatedPhase[],
): ShortLastFeed | undefined {
  const [before, last] = phases.slice(-2);
  if (batch.purpose !== 'meat' || !before || !last || isMedicated(batch)) return undefined;
  const days = last.toAgeDays - last.fromAgeDays;
  if (tables.judgements.birds.fewFeedDays.value < days) return undefined;
  return {
    ...{ name: last.phase.name, before: before.phase.name, days },
    isLeftOut: batch.skipsLastFeed ?? false,
  };
}

/** Whether a label asks for days without it. */
export const isMedicated = ({
  medicatedWithdrawalDays = 0,
}: Pick<Batch, 'medicatedWithdrawalDays'>): boolean => 0 < medicatedWithdrawalDays;

/** The short last feed of a plan, whether it is fed or left out. */
export const lastFeedOf = (
  context: PlanRequest & { readonly life: Life },
): ShortLastFeed | undefined => shortLastFeed(context, phasesOf(context.life));
