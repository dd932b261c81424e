import type { EntityManager } from 'typeorm';
import { addDays, daysBetween, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import { countedFrom } from '../../shared/farm/egg-count.js';
import { arrivalAgeDaysOf } from '../../shared/farm/batch-origin.js';
import type { EggsWereCounted, FactOf } from '../../shared/farm/told-fact.js';
import { firstEggBounds } from '../../shared/plan/first-egg.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { rowById, type Tables } from '../../shared/tables/tables.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';

interface Told {
  readonly eggs: readonly EggsWereCounted[];
  readonly tables: Tables;
}

/**
 * Refuses eggs of birds that are too young to lay any, and more than they can have laid. When they
 * came is taken as it was ordered, or told; a batch whose day is moved later keeps what was told of it.
 */
export async function refuseStrangeEggs(
  manager: EntityManager,
  farmId: string,
  { eggs, tables }: Told,
  fieldOf: (fact: EggsWereCounted, field: string) => string,
): Promise<void> {
  for (const fact of eggs) {
    if (fact.details.eggs === 0) continue;
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const { days, eggs: given } = fact.details;
    const from = layFrom(toBatch(row), tables);
    const first = countedFrom({ date: fact.on, days });
    if (first < from) throw new FieldError([tooYoung(fieldOf(fact, 'on'), first, from)]);
    // A hen lays one a day; those of the day before may have lain in the nest.
    const max = mostThatCame(toBatch(row)) * (days + 1);
    if (max < given) throw new FieldError([tooMany(fieldOf(fact, 'details.eggs'), given, max)]);
  }
}

type EggsWent = FactOf<'eggs-gone'>;

/** Refuses eggs that went of birds that cannot have laid one by then, and more than they can have laid since. */
export async function refuseStrangeEggsGone(
  manager: EntityManager,
  farmId: string,
  { went, tables }: { readonly went: readonly EggsWent[]; readonly tables: Tables },
  fieldOf: (fact: EggsWent, field: string) => string,
): Promise<void> {
  for (const fact of went) {
    const row = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!row) continue;
    const from = layFrom(toBatch(row), tables);
    if (fact.on < from) throw new FieldError([tooYoung(fieldOf(fact, 'on'), fact.on, from)]);
    const { eggs } = fact.details;
    const max = mostThatCame(toBatch(row)) * (daysBetween(from, fact.on) + 1);
    if (max < eggs) throw new FieldError([tooMany(fieldOf(fact, 'details.eggs'), eggs, max)]);
  }
}

/** The first day on which an egg of a batch is believed: of meat birds that of the earliest layer. */
function layFrom(batch: ReturnType<typeof toBatch>, tables: Tables): PlainDate {
  const strain = rowById(tables.strains, batch.strainId);
  const curveId = batch.purpose === 'layers' ? (batch.layCurveId ?? strain.layCurve) : undefined;
  const curves = tables.layCurves.filter(({ id }) => curveId === undefined || id === curveId);
  const least = curves.map((curve) => firstEggBounds(curve, tables.judgements.birds).least);
  return addDays(batch.arrivalDate, Math.min(...least) - arrivalAgeDaysOf(batch));
}

const tooYoung = (field: string, given: PlainDate, min: PlainDate): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given,
  min,
  fix: 'These birds were too young to lay then: tell it of the older hens, or check the day and how many days were counted.',
});

const tooMany = (field: string, given: number, max: number): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given,
  min: 0,
  max,
  fix: 'A hen lays one egg a day. Check the number, and the days on which they were laid.',
});

/** Nobody orders more chicks than this for each bird wanted: straight run for pullets, with losses. */
const MOST_PER_WANTED = 3;
const AND_SOME = 10;

/** Birds that can have come at all, where no arrival was told: those ordered, else far more than are wanted. */
export const mostThatCame = ({
  orderedBirds,
  wantedBirds,
}: Pick<Batch, 'orderedBirds' | 'wantedBirds'>): number =>
  orderedBirds ?? MOST_PER_WANTED * wantedBirds + AND_SOME;
