import { useDeferredValue, useMemo } from 'react';
import { plainDateAt } from '../../../../shared/calendar/plain-date.js';
import type { Batch, Occupancy } from '../../../../shared/farm/batch.js';
import type { Facility } from '../../../../shared/farm/facility.js';
import type { Person } from '../../../../shared/farm/farm.js';
import { planBatch, type BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { PlanRequest } from '../../../../shared/plan/request.js';
import { FieldError } from '../../../../shared/problems/field-problem.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { Climate } from '../../../../shared/weather/climate.js';
import type { SavedFarm } from '../../api/queries.js';
import { messagesByField } from '../../fields/field-words.js';
import { batchWords } from './batch-labels.js';

/** Everything but the batch. */
export interface Setting {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly facilities: readonly Facility[];
  readonly people: readonly Person[];
  readonly climate: Climate;
  readonly occupied: readonly Occupancy[];
}

/** A batch while it is being typed. */
export type BatchDraft = { -readonly [K in keyof Batch]?: Batch[K] | undefined };

export type Planned =
  | { readonly plan: BatchPlan; readonly request: PlanRequest }
  | { readonly errors: Readonly<Record<string, string>> };

/** Plans a draft in the browser with the same core as the service, as it is typed. */
export function usePlan(
  setting: Setting,
  draft: BatchDraft,
  previousArrivalDate: string | undefined,
): Planned {
  const settled = useDeferredValue(draft);
  return useMemo(
    () => planDraft(setting, settled, previousArrivalDate),
    [setting, settled, previousArrivalDate],
  );
}

export function planDraft(
  setting: Setting,
  draft: BatchDraft,
  previousArrivalDate?: string,
): Planned {
  const missing = missingFields(draft);
  if (0 < Object.keys(missing).length) return { errors: missing };
  const request: PlanRequest = {
    ...setting,
    batch: withoutBlanks(draft),
    today: plainDateAt(Date.now(), setting.farm.timeZone),
    ...(previousArrivalDate === undefined ? {} : { previousArrivalDate }),
  };
  try {
    return { plan: planBatch(request), request };
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    return {
      errors: messagesByField(
        error.problems.map((p) => ({ ...p, field: p.field.replace('batch.', '') })),
        batchWords(draft.purpose ?? 'meat', setting.farm),
      ),
    };
  }
}

/** The draft as it is sent and planned: fields that were cleared are left out. */
export function withoutBlanks(draft: BatchDraft): Batch {
  return Object.fromEntries(
    Object.entries(draft).filter(([, value]) => value !== undefined),
  ) as unknown as Batch;
}

function missingFields(draft: BatchDraft): Record<string, string> {
  return {
    ...(draft.name?.trim() ? {} : { name: 'Give the batch a name.' }),
    ...(draft.strainId ? {} : { strainId: 'Choose a breed or cross.' }),
    ...(draft.wantedBirds === undefined ? { wantedBirds: 'Say how many birds you want.' } : {}),
    ...(draft.arrivalDate ? {} : { arrivalDate: 'Choose the day the box comes.' }),
  };
}
