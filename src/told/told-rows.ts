import type { EntityManager, SelectQueryBuilder } from 'typeorm';
import type { FactOf, ToldFact, ToldKind } from '../../shared/farm/told-fact.js';
import { toFact, ToldFactEntity } from './told-fact.entity.js';

const COLUMNS = [
  'id',
  'kind',
  'about',
  'on',
  'details',
  'saidBy',
  'toldAt',
  'key',
  'replaces',
  'takenBackAt',
] as const;

/** Rows of what a farm was told, raw: as `factOfRaw` and `factsIn` read them. */
export function factRows(
  manager: EntityManager,
  farmId: string,
): SelectQueryBuilder<ToldFactEntity> {
  const query = manager.createQueryBuilder(ToldFactEntity, 'f').select([]);
  for (const name of COLUMNS) query.addSelect(`f.${name}`, name);
  return query.where('f.farmId = :farmId', { farmId });
}

/** Of those facts the ones of some kinds that were not taken back, in the order of their telling. */
export async function factsIn<Kind extends ToldKind>(
  query: SelectQueryBuilder<ToldFactEntity>,
  kinds: readonly Kind[],
): Promise<FactOf<Kind>[]> {
  // Ten years of a farm are thousands of facts: rows are read raw, without a class for each.
  const rows = await query
    .andWhere('f.kind IN (:...kinds)', { kinds })
    .andWhere('f.takenBackAt IS NULL')
    .getRawMany<RawFact>();
  // Put in order here: SQLite would go through all years by their order rather than sort a few.
  return (rows.map(factOfRaw) as FactOf<Kind>[]).sort(byTelling);
}

export const byTelling = (a: ToldFact, b: ToldFact): number =>
  a.toldAt < b.toldAt ? -1 : a.toldAt > b.toldAt ? 1 : a.id < b.id ? -1 : 1;

/** That no fact that holds has taken its place: on another day than its own, too. */
export const withoutReplaced = (query: SelectQueryBuilder<ToldFactEntity>): string =>
  `NOT EXISTS ${query
    .subQuery()
    .select('1')
    .from(ToldFactEntity, 'later')
    .where('later.farmId = f.farmId AND later.replaces = f.id')
    .andWhere('later.takenBackAt IS NULL')
    .getQuery()}`;

export type RawFact = Record<(typeof COLUMNS)[number], string | null>;

export const factOfRaw = (raw: RawFact): ToldFact =>
  toFact({ ...raw, details: JSON.parse(raw.details!) as object } as unknown as ToldFactEntity);
