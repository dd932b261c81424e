import { batchOfFact, pictureWithout, type ToldOfBatch } from '../../farm/without-fact.js';
import type { FarmPicture } from '../../farm/picture.js';
import { sayFact } from '../../farm/say-fact.js';
import type { ToldFact } from '../../farm/told-fact.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch } from '../batch-plan.js';
import { planningDay } from '../planning-day.js';
import { whatChanged, type Change } from '../what-changed.js';

/** What became another in the plan of a batch when something was told, and why. */
export interface ChangedByFact {
  /** What was told, in words. */
  readonly because: string;
  readonly changes: readonly Change[];
}

/**
 * What a fact changed in the plan of its batch: the plan as it is, beside the one without that fact.
 * Nothing where it is of no batch, or the batch can be planned only with it, or only without.
 *
 * @param facts of its batch, of the kinds that plans go by and not taken back, the fact among them
 */
export function changedByFact(
  picture: FarmPicture,
  tables: Tables,
  { fact, facts }: { readonly fact: ToldFact; readonly facts: ToldOfBatch },
): ChangedByFact {
  const because = sayFact(fact, picture.farm, () => undefined);
  const batch = picture.batches.find(({ id }) => id === batchOfFact(fact));
  if (!batch) return { because, changes: [] };
  const today = planningDay(batch, picture.today);
  const plan = (of: FarmPicture) => planBatch({ ...of, today }, tables, batch.id);
  try {
    const [before, after] = [plan(pictureWithout(picture, facts, fact)), plan(picture)];
    const judged = tables.judgements.birds;
    return { because, changes: whatChanged(before, after, { reader: picture.farm, judged }) };
  } catch (error) {
    if (error instanceof FieldError) return { because, changes: [] };
    throw error;
  }
}
