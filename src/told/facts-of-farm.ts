import { NotFoundException } from '@nestjs/common';
import { In, IsNull, type EntityManager, type SelectQueryBuilder } from 'typeorm';
import type { PlainDate } from '../../shared/calendar/plain-date.js';
import type {
  FactOf,
  HeightRead,
  HerdMove,
  ToldFact,
  ToldKind,
} from '../../shared/farm/told-fact.js';
import type { Database } from '../database/database.js';
import { isId } from '../database/ids.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { KeptAtRevision } from './kept-at-revision.js';
import { ToldChanges } from './told-changes.js';
import { toFact, ToldFactEntity } from './told-fact.entity.js';
import {
  byTelling,
  factOfRaw,
  factRows,
  factsIn,
  withoutReplaced,
  type RawFact,
} from './told-rows.js';
import type { ToldQueryDto } from './told.dto.js';

const PAGE = 200;
const TICKS = ['chore-done', 'alarm-seen'] as const satisfies readonly ToldKind[];

/** Some of a farm's facts, the newest first, and how many there are. */
export interface ToldPage {
  readonly facts: readonly ToldFact[];
  readonly total: number;
  readonly skip: number;
  /** With history: ids of those here that another one has taken the place of. */
  readonly replaced?: readonly string[];
}

/** Reads what farms were told: by kind, by day, by what it is about. */
export class FactsOfFarm {
  readonly changes = new ToldChanges();
  /** All moves of a farm: where herds stand, the picture and each new move go by those of ten years. */
  protected readonly keptMoves = new KeptAtRevision<readonly HerdMove[]>(this.changes, [
    'herd-move',
  ]);
  /** What was bought since the days of batches that were looked back at. */
  private readonly keptBought = new KeptAtRevision<readonly FactOf<'bought'>[]>(this.changes, [
    'bought',
  ]);
  /** Heights read in the seasons that plans go back to. */
  private readonly keptHeights = new KeptAtRevision<readonly HeightRead[]>(this.changes, [
    'grass-reading',
  ]);

  constructor(protected readonly database: Database) {}

  /** One fact. @throws NotFoundException when the farm was told none with the id */
  async findOne(farmId: string, id: string): Promise<ToldFact> {
    const row = isId(id)
      ? await this.database.manager.findOneBy(ToldFactEntity, { id, farmId })
      : null;
    if (!row) throw notTold(id);
    return toFact(row);
  }

  /** Every fact of some kinds that was not taken back, in the order in which they were told. */
  factsOf<Kind extends ToldKind>(
    farmId: string,
    ...kinds: readonly Kind[]
  ): Promise<FactOf<Kind>[]> {
    return factsIn(this.rows(farmId), kinds);
  }

  /** The same of what happened since a day: those of many years before are not read. */
  factsSince<Kind extends ToldKind>(
    farmId: string,
    since: PlainDate,
    kinds: readonly Kind[],
  ): Promise<FactOf<Kind>[]> {
    const query = this.rows(farmId).andWhere('f.on >= :since', { since });
    // What took the place of one may be of an earlier day, and not read.
    return factsIn(query.andWhere(withoutReplaced(query)), kinds);
  }

  /**
   * Moves of herds that were not taken back.
   *
   * @param at the farm's revision, where it was read in the same snapshot
   */
  async movesOf(farmId: string, at?: number): Promise<readonly HerdMove[]> {
    if (this.database.isWriting) return this.factsOf(farmId, 'herd-move');
    const revision = at ?? (await revisionOf(this.database.manager, farmId));
    const known = this.keptMoves.at(farmId, revision);
    if (known) return known;
    return this.database.snapshot(async (manager) => {
      const moves = await this.factsOf(farmId, 'herd-move');
      this.keptMoves.set(farmId, await revisionOf(manager, farmId), moves);
      return moves;
    });
  }

  /** The same of what is about one thing, or some. */
  factsAbout<Kind extends ToldKind>(
    farmId: string,
    about: string | readonly string[],
    kinds: readonly Kind[],
  ): Promise<FactOf<Kind>[]> {
    const all = [...new Set([about].flat())];
    return factsIn(this.rows(farmId).andWhere('f.about IN (:...all)', { all }), kinds);
  }

  /**
   * Facts of some kinds of a batch and of its work, and what was bought since a day, as `factsOf`
   * gives them.
   *
   * @param at the farm's revision, where what was bought may have been read before
   */
  async factsOfBatch(
    farmId: string,
    batchId: string,
    {
      kinds,
      since,
      at,
    }: { readonly kinds: readonly ToldKind[]; readonly since: PlainDate; readonly at: number },
  ): Promise<ToldFact[]> {
    // Asked apart: each is found by an index of its own, without reading all years.
    const work = this.rows(farmId)
      .andWhere('f.on >= :since', { since })
      .andWhere('f.about LIKE :work', { work: `batch/${batchId}/%` });
    return [
      ...(await this.factsAbout(farmId, batchId, kinds)),
      ...(await factsIn(work, ['work-progress'])),
      ...(await this.keptSince('bought', this.keptBought, { farmId, since, at })),
    ].sort(byTelling);
  }

  /** Heights read since a day, at the farm's revision. */
  heightsSince(farmId: string, since: PlainDate, at: number): Promise<readonly HeightRead[]> {
    return this.keptSince('grass-reading', this.keptHeights, { farmId, since, at });
  }

  /** Facts of a kind since a day: hundreds, which entries of other kinds leave as they are. */
  private async keptSince<Kind extends ToldKind>(
    kind: Kind,
    kept: KeptAtRevision<readonly FactOf<Kind>[]>,
    {
      farmId,
      since,
      at,
    }: { readonly farmId: string; readonly since: PlainDate; readonly at: number },
  ): Promise<readonly FactOf<Kind>[]> {
    const read = (): Promise<FactOf<Kind>[]> => this.factsSince(farmId, since, [kind]);
    if (this.database.isWriting) return read();
    const known = kept.at(farmId, at, since);
    if (known) return known;
    return this.database.snapshot(async (manager) => {
      const facts = await read();
      kept.set(farmId, await revisionOf(manager, farmId), facts, since);
      return facts;
    });
  }

  /** Facts of some kinds of a calendar year that were not taken back, in the order they were told. */
  async factsOfYear(farmId: string, year: number, kinds: readonly ToldKind[]): Promise<ToldFact[]> {
    const query = this.rows(farmId).andWhere('f.on >= :first AND f.on <= :last', {
      first: `${year}-01-01`,
      last: `${year}-12-31`,
    });
    return factsIn(query.andWhere(withoutReplaced(query)), kinds);
  }

  /** Whether anything holds that was told of a batch or a job of one's own, or of its work. */
  async isToldOf(farmId: string, of: 'batch' | 'own', id: string): Promise<boolean> {
    const [own, work] = of === 'batch' ? [id, `batch/${id}/%`] : [`own/${id}`, `own/${id}/%`];
    const found = await this.rows(farmId)
      .andWhere('(f.about = :own OR f.about LIKE :work)', { own, work })
      .andWhere("f.kind <> 'row-changed' AND f.takenBackAt IS NULL")
      .limit(1)
      .getRawMany<RawFact>();
    return 0 < found.length;
  }

  /** Whether something was told under a key, taken back since or not. */
  async hasKey(farmId: string, key: string): Promise<boolean> {
    return (await this.database.manager.countBy(ToldFactEntity, { farmId, key })) !== 0;
  }

  async find(farmId: string, asked: ToldQueryDto): Promise<ToldPage> {
    const { kind, about, from, to, history = false, ticks = true, skip = 0, take = PAGE } = asked;
    const query = this.rows(farmId);
    if (kind !== undefined) query.andWhere('f.kind = :kind', { kind });
    if (about !== undefined) query.andWhere('f.about = :about', { about });
    if (from !== undefined) query.andWhere('f.on >= :from', { from });
    if (to !== undefined) query.andWhere('f.on <= :to', { to });
    if (!ticks) query.andWhere('f.kind NOT IN (:...ticks)', { ticks: TICKS });
    if (!history) {
      query.andWhere('f.takenBackAt IS NULL').andWhere(withoutReplaced(query));
    }
    // Not the builder's own count, which sorts out doubles that a primary key cannot have.
    const counted = await query.clone().select('COUNT(*)', 'total').getRawOne<{ total: unknown }>();
    const total = Number(counted!.total);
    const rows = await query
      .orderBy('f.on', 'DESC')
      .addOrderBy('f.toldAt', 'DESC')
      .addOrderBy('f.id', 'DESC')
      .offset(skip)
      .limit(take)
      .getRawMany<RawFact>();
    const facts = rows.map(factOfRaw);
    return {
      facts,
      total,
      skip,
      ...(history ? { replaced: await this.replacedOf(farmId, facts) } : {}),
    };
  }

  /** Ids of those facts that another one that holds has taken the place of. */
  private async replacedOf(farmId: string, facts: readonly ToldFact[]): Promise<string[]> {
    if (facts.length === 0) return [];
    const later = await this.database.manager.find(ToldFactEntity, {
      select: { replaces: true },
      where: { farmId, replaces: In(facts.map(({ id }) => id)), takenBackAt: IsNull() },
    });
    return later.map(({ replaces }) => replaces!);
  }

  protected rows(farmId: string): SelectQueryBuilder<ToldFactEntity> {
    return factRows(this.database.manager, farmId);
  }
}

async function revisionOf(manager: EntityManager, farmId: string): Promise<number> {
  const where = { id: farmId };
  const select = { id: true, revision: true } as const;
  return (await manager.findOneOrFail(FarmEntity, { where, select })).revision;
}

export const notTold = (id: string): NotFoundException =>
  new NotFoundException(`This farm was told nothing with the id "${id.slice(0, 64)}".`);
