import type { EntityManager } from 'typeorm';
import { expectedBirds, shortOn, type HeadChange } from '../../shared/farm/head-count.js';
import { headChangesOf, type HeadsChanged } from '../../shared/farm/told-fact.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { lifeOf } from '../../shared/plan/life.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';

interface Told {
  /** What was told or taken back of heads. */
  readonly changed: readonly HeadsChanged[];
  /** All of these batches that were not taken back, with the change. */
  readonly all: readonly HeadsChanged[];
  readonly tables: Tables;
}

/** Refuses more birds dead or gone than there were, and birds that died before they came. */
export async function settleHeads(
  manager: EntityManager,
  farmId: string,
  { changed, all, tables }: Told,
  fieldOf: (fact: HeadsChanged, field: string) => string,
): Promise<void> {
  const changes = headChangesOf(all);
  for (const fact of changed) {
    const batch = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!batch) continue;
    const own = changes.filter(({ batchId }) => batchId === fact.about);
    const early = before(own, batch.arrivalDate);
    if (early) throw new FieldError([tooEarly(fieldOf(fact, 'on'), early)]);
    const { birds, isKnown } = placedOf(batch, own, tables);
    const short = shortOn(own, birds);
    if (!short) continue;
    const { units } = await manager.findOneByOrFail(FarmEntity, { id: farmId });
    const day = (date: string): string => formatLongDate(date, { units });
    throw new FieldError([tooMany(fieldOf(fact, 'details.birds'), fact, { short, day, isKnown })]);
  }
}

/**
 * Birds that are taken to have come: as told or ordered, else those of the plan. More may have come than
 * that, which can be told.
 */
function placedOf(row: BatchEntity, own: readonly HeadChange[], tables: Tables): Placed {
  const batch = toBatch(row);
  const isKnown =
    batch.orderedBirds !== undefined || own.some(({ change }) => change === 'arrived');
  const expected = expectedBirds(batch);
  // Few are told to be gone of most batches: then no plan has to be asked.
  if (isKnown || !shortOn(own, expected)) return { birds: expected, isKnown };
  return { birds: Math.max(expected, lifeOf(batch, tables).placed), isKnown };
}

interface Placed {
  readonly birds: number;
  /** Somebody told how many came, or how many were ordered. */
  readonly isKnown: boolean;
}

interface Early {
  readonly given: string;
  readonly came: string;
}

function before(own: readonly HeadChange[], arrivalDate: string): Early | undefined {
  const came = own.findLast(({ change }) => change === 'arrived')?.date ?? arrivalDate;
  const early = own.find(({ date, change }) => change !== 'arrived' && date < came);
  return early && { given: early.date, came };
}

const tooEarly = (field: string, { given, came }: Early): FieldProblem => ({
  field,
  code: 'out-of-bounds',
  given,
  min: came,
  fix: 'That is before the birds came. Check the day, or tell first on which day they came.',
});

interface Short {
  readonly short: NonNullable<ReturnType<typeof shortOn>>;
  /** A date as the household writes it. */
  readonly day: (date: string) => string;
  readonly isKnown: boolean;
}

const ASK_HOW_MANY =
  'Nobody told how many came: check the number, and if more came, tell that first.';

/** More went on a day than there were: on the day of the fact itself, or on a later one. */
const tooMany = (
  field: string,
  fact: HeadsChanged,
  { short: { there, took, date }, day, isKnown }: Short,
): FieldProblem =>
  fact.on < date
    ? {
        field,
        code: 'conflict',
        given: fact.details.birds,
        fix: `Then only ${there} are left on ${day(date)}, and ${took} are told to have gone on that day. ${isKnown ? 'Check what was told of it first.' : ASK_HOW_MANY}`,
      }
    : {
        field,
        code: 'out-of-bounds',
        given: fact.details.birds,
        min: 0,
        // Of those that are told to have gone on that day these are some.
        max: fact.kind === 'arrived' ? there : there - (took - fact.details.birds),
        fix: isKnown
          ? `No more can go than there are on ${day(date)}. Check the number, or what was told before.`
          : `No more can go than there are by the plan on ${day(date)}. ${ASK_HOW_MANY}`,
      };
