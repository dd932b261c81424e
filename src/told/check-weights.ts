import type { EntityManager } from 'typeorm';
import { asItCame } from '../../shared/plan/flock-told.js';
import type { HeadChange } from '../../shared/farm/head-count.js';
import type { FactOf } from '../../shared/farm/told-fact.js';
import { averageOf } from '../../shared/farm/weighing.js';
import { outward } from '../../shared/farm/outward.js';
import { weightBounds } from '../../shared/plan/weight-bounds.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';

type Weighed = FactOf<'weighed'>;

interface Told {
  readonly weighed: readonly Weighed[];
  /** Of these batches, those of all that was told. */
  readonly heads: readonly HeadChange[];
  readonly tables: Tables;
}

/** Refuses a weight that no bird of that strain has at that age: a slip of the pen, or another unit. */
export async function refuseStrangeWeights(
  manager: EntityManager,
  farmId: string,
  { weighed, heads, tables }: Told,
  fieldOf: (fact: Weighed, field: string) => string,
): Promise<void> {
  for (const fact of weighed) {
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const own = heads.filter(({ batchId }) => batchId === fact.about);
    const batch = asItCame(toBatch(row), own);
    const bounds = weightBounds(batch, fact.on, tables);
    const { totalKg } = fact.details;
    const isTotal = totalKg !== undefined;
    const birds = isTotal ? fact.details.birds : 1;
    const given = totalKg ?? averageOf(fact.details);
    const { min, max } = outward({ min: bounds.min * birds, max: bounds.max * birds });
    if (min <= given && given <= max) continue;
    throw new FieldError([
      {
        field: fieldOf(fact, isTotal ? 'details.totalKg' : 'details.averageKg'),
        code: 'out-of-bounds',
        given,
        min,
        max,
        unit: 'kg',
        fix: 'Birds of this strain are nowhere near that weight at that age: check the number, its unit and the day.',
      },
    ]);
  }
}

type Processed = FactOf<'processed'>;

/** Refuses birds processed of which each would weigh more than any of that strain, alive or dressed. */
export async function refuseHeavyProcessed(
  manager: EntityManager,
  farmId: string,
  { processed, tables }: { readonly processed: readonly Processed[]; readonly tables: Tables },
  fieldOf: (fact: Processed, field: string) => string,
): Promise<void> {
  for (const fact of processed) {
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const { birds } = fact.details;
    const bounds = weightBounds(toBatch(row), fact.on, tables);
    const { max } = outward({ min: 0, max: bounds.max * birds });
    for (const name of ['liveKg', 'dressedKg'] as const) {
      const given = fact.details[name];
      if (given === undefined || given <= max) continue;
      throw new FieldError([
        {
          ...{ field: fieldOf(fact, `details.${name}`), code: 'out-of-bounds', given },
          ...{ min: 0, max, unit: 'kg' },
          fix: 'No birds of this strain weigh so much at that age: check the number, its unit, and how many they were.',
        },
      ]);
    }
  }
}
