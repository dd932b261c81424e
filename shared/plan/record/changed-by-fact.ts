import { batchOfFact, pictureWithout, type ToldOfBatch } from '../../farm/without-fact.js';
import type { FarmPicture } from '../../farm/picture.js';
import { sayFact } from '../../farm/say-fact.js';
import type { ToldFact } from '../../farm/told-fact.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch } from '../batch-plan.js';
import { planningDay } from '../planning-day.js';
import { deadInBox } from './dead-in-box.js';
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
    // Of birds that are all gone nothing is still to be planned: their record says how they went.
    if (after.birds.counted !== undefined && after.birds.counted.now.value < 1)
      return { because, changes: [] };
    const changes = [
      // What is to be done today stands above dates of months ahead.
      ...deadInBox(fact, batch, before).map((words) => ({ id: 'dead-in-box' as const, words })),
      ...whatChanged(before, after, { reader: picture.farm, judged }),
    ];
    const isMore = before.birds.atEnd.value < after.birds.atEnd.value;
    return { because, changes: isMore && fact.kind === 'died' ? changes.map(andWhy) : changes };
  } catch (error) {
    if (error instanceof FieldError) return { because, changes: [] };
    throw error;
  }
}

/** A plan reckons with more losses than were told: a death that is told can leave more birds. */
const andWhy = (change: Change): Change =>
  change.id === 'birds'
    ? { ...change, words: `${change.words} Fewer have died so far than is usual by their age.` }
    : change;
