import { batchOfFact, pictureWithout, type ToldOfBatch } from '../../farm/without-fact.js';
import type { FarmPicture, NamedBatch } from '../../farm/picture.js';
import { sayFact } from '../../farm/say-fact.js';
import type { ToldFact } from '../../farm/told-fact.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { planningDay } from '../planning-day.js';
import { deadInBox } from './dead-in-box.js';
import { weighedSaid } from './weighed-said.js';
import { weightFollows, type LeavingChoice, type WeightFollows } from './weight-follows.js';
import { whatChanged, type Change } from '../what-changed.js';

/** What became another in the plan of a batch when something was told, and why. */
export interface ChangedByFact {
  /** What was told, in words. */
  readonly because: string;
  readonly changes: readonly Change[];
  /** Another day of processing, where weights that were told leave the choice. */
  readonly choice?: LeavingChoice;
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
  const named = [...picture.paddocks, ...(picture.cows ?? [])];
  const nameOf = (id: string) => named.find((each) => each.id === id)?.name;
  const because = sayFact(fact, picture.farm, nameOf);
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
    const follows =
      fact.kind === 'weighed'
        ? weightFollows({ picture, tables, batch, before, after })
        : undefined;
    const reader = { ...picture.farm, today: picture.today };
    const changes = [
      // What is to be done today stands above dates of months ahead.
      ...deadInBox(fact, batch, before).map((words) => ({ id: 'dead-in-box' as const, words })),
      ...weighedSaid(fact, after, { reader, judged }).map((words) => ({
        ...{ id: 'weighed' as const, words },
      })),
      ...withFollows(whatChanged(before, after, { reader, judged }), follows),
    ];
    const why = whyBirds(fact, batch, { before, after });
    return {
      because,
      changes: changes.map((change) =>
        change.id === 'birds' ? { ...change, words: `${change.words}${why}` } : change,
      ),
      ...(follows?.choice ? { choice: follows.choice } : {}),
    };
  } catch (error) {
    if (error instanceof FieldError) return { because, changes: [] };
    throw error;
  }
}

/** What a weight means for their last day stands in the place of the weight alone. */
export const withFollows = (
  changes: readonly Change[],
  follows: WeightFollows | undefined,
): readonly Change[] =>
  changes.flatMap((change) =>
    change.id === 'weight' && follows && 0 < follows.changes.length ? follows.changes : [change],
  );

/** What stands beside another number of birds at the end; empty where it says all itself. */
function whyBirds(
  fact: ToldFact,
  { wantedBirds }: Pick<NamedBatch, 'wantedBirds'>,
  { before, after }: { readonly before: BatchPlan; readonly after: BatchPlan },
): string {
  const [had, has] = [before, after].map(({ birds }) => Math.round(birds.atEnd.value)) as [
    number,
    number,
  ];
  // A plan reckons with more losses than were told: a death that is told can leave more birds.
  if (fact.kind === 'died' && had < has)
    return ' Fewer have died so far than is usual by their age.';
  const isLost = fact.kind === 'died' || fact.kind === 'arrived';
  if (!isLost || had <= has || wantedBirds <= has) return '';
  const way =
    fact.kind === 'arrived'
      ? 'what the seller makes good, or another batch'
      : 'another batch, or fewer';
  return ` ${wantedBirds - has} short of the ${wantedBirds} wanted: ${way}.`;
}
