import { daysBetween } from '../../calendar/plain-date.js';
import type { Moved } from '../../explain/moved.js';
import type { Quantity } from '../../explain/quantity.js';
import type { FarmPicture, NamedBatch } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import type { Reader } from '../../units/format.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { placeOf, quantityAt } from './place-in-plan.js';
import { plausibleChanges, type PlausibleChange } from './plausible-changes.js';

export interface PlannedBatch {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly batch: NamedBatch;
  readonly plan: BatchPlan;
  readonly reader: Reader;
}

/** Least change that is worth telling: days of a date, a share of a number. */
const LEAST = { days: 1, share: 0.005 } as const;

/**
 * What moves a number of a plan most: the batch is planned again with one thing changed at a time.
 * What only the household chooses is told where nothing that can happen moves it. Yields once for
 * each plan that it makes, so that a page can do something else between them; the last is the answer.
 */
export function* whatMovesMost(
  asked: PlannedBatch,
  quantity: Quantity,
): Generator<undefined, Moved | undefined> {
  const { picture, tables, batch, plan, reader } = asked;
  const place = placeOf(plan, quantity);
  if (!place) return undefined;
  const changes = plausibleChanges(picture, tables, batch, plan, reader);
  for (const kind of ['happens', 'chosen'] as const) {
    let most: (Moved & { readonly size: number }) | undefined;
    for (const change of changes.filter((each) => each.kind === kind)) {
      const changed = replanned(change, asked);
      const to = changed && quantityAt(changed, place);
      const size = to ? sizeOf(quantity, to) : 0;
      if (to && (most?.size ?? 0) < size) most = { what: change.what, to, size };
      yield undefined;
    }
    if (most) return { what: most.what, to: most.to };
  }
  return undefined;
}

/** Undefined where nothing can be planned that way, such as a share beyond its bounds. */
function replanned(
  { picture }: PlausibleChange,
  { tables, batch }: PlannedBatch,
): BatchPlan | undefined {
  try {
    return planBatch(picture(), tables, batch.id);
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}

/** How much a number or date moved; none where it is too little to tell. */
function sizeOf(before: Quantity, after: Quantity): number {
  const [from, to] = [before.value, after.value];
  if (typeof from === 'number' && typeof to === 'number') {
    const share = Math.abs(to - from) / Math.max(Math.abs(from), 1e-9);
    return share < LEAST.share ? 0 : share;
  }
  if (before.unit !== 'date' || typeof from !== 'string' || typeof to !== 'string') return 0;
  const days = Math.abs(daysBetween(from, to));
  return days < LEAST.days ? 0 : days;
}
