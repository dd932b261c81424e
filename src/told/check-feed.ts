import { In, type EntityManager } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import { asItCame } from '../../shared/plan/flock-told.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { HeadChange } from '../../shared/farm/head-count.js';
import type { FactOf } from '../../shared/farm/told-fact.js';
import { mostFeedKg } from '../../shared/plan/most-feed.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { usualBagKg } from '../../shared/tables/usual-bag.js';
import { formatLongDate } from '../../shared/units/dates.js';
import { BatchEntity, toBatch } from '../batches/batch.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { mostThatCame } from './check-eggs.js';

type AtBirds = FactOf<'feed-opened' | 'brooder-seen'>;
type FieldOf = (fact: AtBirds, field: string) => string;

interface Told {
  readonly told: readonly AtBirds[];
  /** Of these batches, those of all that was told. */
  readonly heads: readonly HeadChange[];
  readonly tables: Tables;
}

/**
 * Refuses what is told of birds that come only in weeks, and more feed opened at once than they can
 * eat in months: the bags of another batch, pounds typed for bags.
 */
export async function refuseStrangeFeed(
  manager: EntityManager,
  farmId: string,
  { told, heads, tables }: Told,
  fieldOf: FieldOf,
): Promise<void> {
  if (told.length === 0) return;
  const farm = await manager.findOneByOrFail(FarmEntity, { id: farmId });
  const ids = [...new Set(told.map(({ about }) => about))];
  const rows = await manager.findBy(BatchEntity, { id: In(ids), farmId });
  for (const fact of told) {
    const row = rows.find(({ id }) => id === fact.about);
    if (!row) continue;
    const own = heads.filter(({ batchId }) => batchId === fact.about);
    const batch = asItCame(toBatch(row), own);
    const min = addDays(batch.arrivalDate, -tables.judgements.alarms.readyAheadDays.value);
    if (fact.on < min) {
      const comes = formatLongDate(batch.arrivalDate, farm);
      const fix = `These birds come on ${comes} by what is written. Name the birds it was for, or tell first that these came, or write their day anew.`;
      const field = fieldOf(fact, 'on');
      throw new FieldError([{ field, code: 'out-of-bounds', given: fact.on, min, fix }]);
    }
    if (fact.kind !== 'feed-opened') continue;
    const { bags, bagKg = batch.bagKg ?? usualBagKg(tables, farm) } = fact.details;
    const max = mostBags(batch, fact, { tables, bagKg });
    if (bags <= max) continue;
    const field = fieldOf(fact, 'details.bags');
    const fix =
      'So many birds do not eat that in months. Check how many bags it was, and how heavy one is.';
    throw new FieldError([{ field, code: 'out-of-bounds', given: bags, min: 0, max, fix }]);
  }
}

const mostBags = (
  batch: Batch,
  { on }: AtBirds,
  { tables, bagKg }: { readonly tables: Tables; readonly bagKg: number },
): number =>
  Math.max(
    tables.judgements.alarms.feedAtOnceBags.value,
    Math.ceil((mostThatCame(batch) * mostFeedKg(batch, on, tables)) / bagKg),
  );
