import { useMemo } from 'react';
import type { Batch } from '../../../../shared/farm/batch.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../../../shared/farm/picture.js';
import { planBatch, type BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { planningDay } from '../../../../shared/plan/planning-day.js';
import { FieldError } from '../../../../shared/problems/field-problem.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { farmDay, type SavedFarm } from '../../api/queries.js';
import { messagesByField } from '../../fields/field-words.js';
import { batchWords } from './batch-labels.js';

/** A farm's picture and the tables: everything but the batch that is typed. */
export interface Setting {
  readonly farm: SavedFarm;
  readonly picture: FarmPicture;
  readonly tables: Tables;
}

/** Names that other batches have. */
export const otherNames = ({ picture }: Setting, { id }: BatchDraft): string[] =>
  picture.batches.filter((batch) => batch.id !== id).map(({ name }) => name);

/** A batch in the picture that its plan was made from. */
export interface AskedBatch extends Setting {
  readonly batch: NamedBatch;
}

/** A batch while it is being typed. */
export type BatchDraft = { -readonly [K in keyof Batch]?: Batch[K] | undefined };

export type Planned =
  | { readonly plan: BatchPlan; readonly asked: AskedBatch }
  | { readonly errors: Readonly<Record<string, string>> };

/** Plans a draft in the browser with the same core as the service. */
export function usePlan(
  setting: Setting,
  draft: BatchDraft,
  previousArrivalDate: string | undefined,
): Planned {
  return useMemo(
    () => planDraft(setting, draft, previousArrivalDate),
    [setting, draft, previousArrivalDate],
  );
}

export function planDraft(
  setting: Setting,
  draft: BatchDraft,
  previousArrivalDate?: string,
): Planned {
  const missing = missingFields(draft);
  if (0 < Object.keys(missing).length) return { errors: missing };
  const asked = inPicture(setting, withoutBlanks(draft), previousArrivalDate);
  try {
    const { picture, tables, batch } = asked;
    return { plan: planBatch(picture, tables, batch.id, previousArrivalDate), asked };
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

/** No saved batch has it: ids are random. */
const NEW_BATCH = 'new';

/** A batch as it is typed, in the picture of its farm as of today. */
export function inPicture(setting: Setting, typed: Batch, savedArrivalDate?: string): AskedBatch {
  const batch = { ...typed, id: typed.id ?? NEW_BATCH };
  const now = farmDay(setting.farm);
  // A saved batch of long ago is planned as it was; a date typed now is planned from today.
  const today = typed.arrivalDate === savedArrivalDate ? planningDay(typed, now) : now;
  const { arrivalDate: date, orderedBirds } = typed;
  // A new one of a past day is here, and was counted: it is told so when it is saved.
  const came =
    typed.id === undefined && date < now && orderedBirds !== undefined
      ? [{ batchId: NEW_BATCH, change: 'arrived' as const, date, birds: orderedBirds }]
      : [];
  const { headChanges } = setting.picture;
  const picture = { ...setting.picture, today, headChanges: [...headChanges, ...came] };
  return { ...setting, batch, picture: withBatch(picture, batch) };
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
    ...(draft.arrivalDate ? {} : { arrivalDate: 'Choose the day they come.' }),
  };
}
