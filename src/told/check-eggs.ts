import type { EntityManager } from 'typeorm';
import { addDays, type PlainDate } from '../../shared/calendar/plain-date.js';
import { countedFrom } from '../../shared/farm/egg-count.js';
import { arrivalAgeDaysOf } from '../../shared/farm/batch.js';
import type { EggsWereCounted } from '../../shared/farm/told-fact.js';
import { firstEggBounds } from '../../shared/plan/first-egg.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { rowById, type Tables } from '../../shared/tables/tables.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';

interface Told {
  readonly eggs: readonly EggsWereCounted[];
  readonly tables: Tables;
}

/**
 * Refuses eggs of birds that are too young to lay any. When they came is taken as it was ordered, or
 * told; a batch whose day is moved later keeps what was told of it.
 */
export async function refuseEarlyEggs(
  manager: EntityManager,
  farmId: string,
  { eggs, tables }: Told,
  fieldOf: (fact: EggsWereCounted, field: string) => string,
): Promise<void> {
  for (const fact of eggs) {
    if (fact.details.eggs === 0) continue;
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    const from = row && layFrom(toBatch(row), tables);
    if (!from) continue;
    const first = countedFrom({ date: fact.on, days: fact.details.days });
    if (first < from) throw new FieldError([tooYoung(fieldOf(fact, 'on'), first, from)]);
  }
}

/** The first day on which an egg of a batch is believed; undefined for birds that are not for eggs. */
function layFrom(batch: ReturnType<typeof toBatch>, tables: Tables): PlainDate | undefined {
  if (batch.purpose !== 'layers') return undefined;
  const strain = rowById(tables.strains, batch.strainId);
  const curve = rowById(tables.layCurves, batch.layCurveId ?? strain.layCurve!);
  const { least } = firstEggBounds(curve, tables.judgements.birds);
  return addDays(batch.arrivalDate, least - arrivalAgeDaysOf(batch));
}

const tooYoung = (field: string, given: PlainDate, min: PlainDate): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given,
  min,
  fix: 'These birds were too young to lay then: tell it of the older hens, or check the day and how many days were counted.',
});
