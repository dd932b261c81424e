import type { EntityManager } from 'typeorm';
import { shortOn, type HeadChange } from '../../shared/farm/head-count.js';
import { headChangesOf, type HeadsChanged } from '../../shared/farm/told-fact.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';

interface Told {
  /** What was told or taken back of heads. */
  readonly changed: readonly HeadsChanged[];
  /** All of these batches that were not taken back, with the change. */
  readonly all: readonly HeadsChanged[];
}

/** Refuses more birds dead or gone than there were, and birds that died before they came. */
export async function settleHeads(
  manager: EntityManager,
  farmId: string,
  { changed, all }: Told,
  fieldOf: (fact: HeadsChanged, field: string) => string,
): Promise<void> {
  const changes = headChangesOf(all);
  for (const fact of changed) {
    const batch = await manager.findOneBy(BatchEntity, { id: fact.about, farmId });
    if (!batch) continue;
    const own = changes.filter(({ batchId }) => batchId === fact.about);
    const early = before(own, batch.arrivalDate);
    if (early) throw new FieldError([tooEarly(fieldOf(fact, 'on'), early)]);
    const short = shortOn(own, mostThatCame(batch.details as Ordered));
    if (!short) continue;
    const { units } = await manager.findOneByOrFail(FarmEntity, { id: farmId });
    const day = (date: string): string => formatLongDate(date, { units });
    throw new FieldError([tooMany(fieldOf(fact, 'details.birds'), fact, { short, day })]);
  }
}

interface Ordered {
  readonly orderedBirds?: number;
  readonly wantedBirds: number;
}

/** Nobody orders more chicks than this for each bird wanted: straight run for pullets, with losses. */
const MOST_PER_WANTED = 3;
const AND_SOME = 10;

/** Birds that can have come, where no arrival was told: those ordered, else far more than are wanted. */
export const mostThatCame = ({ orderedBirds, wantedBirds }: Ordered): number =>
  orderedBirds ?? MOST_PER_WANTED * wantedBirds + AND_SOME;

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
}

/** More went on a day than there were: on the day of the fact itself, or on a later one. */
const tooMany = (
  field: string,
  fact: HeadsChanged,
  { short: { there, took, date }, day }: Short,
): FieldProblem =>
  fact.on < date
    ? {
        field,
        code: 'conflict',
        given: fact.details.birds,
        fix: `Then only ${there} are left on ${day(date)}, and ${took} are told to have gone on that day. Check what was told of it first.`,
      }
    : {
        field,
        code: 'out-of-bounds',
        given: fact.details.birds,
        min: 0,
        max: there,
        fix: `No more can go than there are on ${day(date)}. Check the number, or what was told before.`,
      };
