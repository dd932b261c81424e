import { Injectable, NotFoundException } from '@nestjs/common';
import { AsyncLocalStorage } from 'node:async_hooks';
import { randomUUID } from 'node:crypto';
import { In, IsNull, type EntityManager, type SelectQueryBuilder } from 'typeorm';
import { plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import { HEAD_CHANGES } from '../../shared/farm/head-count.js';
import {
  changesHeads,
  headChangesOf,
  holding,
  type CattleWent,
  type EggsWereCounted,
  type FactOf,
  type HeadsChanged,
  type HerdMove,
  type ToldFact,
  type ToldKind,
} from '../../shared/farm/told-fact.js';
import { isMovesKey, isTurnOutWork } from '../../shared/farm/herd-move-work.js';
import { isMowingWork } from '../../shared/farm/mowing.js';
import { TOLD_KINDS, type ToldOn } from '../../shared/farm/told-kinds.js';
import { isId } from '../database/ids.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { TablesService } from '../reference/tables.service.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { keepFacts, type Said } from './keep-facts.js';
import { refuseStrangeWeights } from './check-weights.js';
import { settleCattle } from './check-cattle.js';
import { settleHeads } from './check-heads.js';
import { refuseStrangeEggs } from './check-eggs.js';
import { settlePhotos } from './check-photos.js';
import { settlePlaces } from './check-places.js';
import { KeptMoves } from './kept-moves.js';
import { RoomForFacts } from './room-for-facts.js';
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
const leavesPlans = (kind: ToldKind): boolean => TOLD_KINDS[kind].leavesPlans === true;
const TICKS = ['chore-done', 'alarm-seen'] as const satisfies readonly ToldKind[];
const ROWS_AT_ONCE = 200;

/** Some of a farm's facts, the newest first, and how many there are. */
export interface ToldPage {
  readonly facts: readonly ToldFact[];
  readonly total: number;
  readonly skip: number;
  /** With history: ids of those here that another one has taken the place of. */
  readonly replaced?: readonly string[];
}

/** What was told so far in a write in which nothing but telling happens. */
interface ToldAlone {
  readonly kinds: Set<ToldKind>;
  /** All moves of the farm, where one was among it. */
  moves?: readonly HerdMove[];
}

/** Keeps what is told of a farm. Nothing is ever overwritten or deleted: it is taken back. */
@Injectable()
export class ToldService {
  readonly changes = new ToldChanges();
  private readonly alone = new AsyncLocalStorage<ToldAlone>();
  private readonly keptMoves = new KeptMoves(this.changes);
  private readonly room = new RoomForFacts();

  constructor(
    private readonly database: Database,
    private readonly tables: TablesService,
  ) {}

  /**
   * A write in which nothing is changed but by what is told or taken back: whoever holds what was
   * read before it reads no more than those kinds again. Within another write it is a part of that.
   */
  async telling<T>(
    farmId: string,
    work: (manager: EntityManager) => Promise<T>,
    { raises = true } = {},
  ): Promise<T> {
    if (this.database.isWriting) return this.database.write(farmId, work, { raises });
    const told: ToldAlone = { kinds: new Set() };
    let revision = 0;
    const writeAll = async (manager: EntityManager): Promise<T> => {
      const result = await work(manager);
      if (raises) revision = await revisionOf(manager, farmId);
      return result;
    };
    const result = await this.alone.run(told, () =>
      this.database.write(farmId, writeAll, { raises }),
    );
    // Only now is it so: what was thrown out again has changed nothing.
    if (raises) this.changes.add(farmId, revision, [...told.kinds]);
    if (told.moves) this.keptMoves.set(farmId, revision, told.moves);
    return result;
  }

  private noteTold(kinds: readonly ToldKind[]): void {
    for (const kind of kinds) this.alone.getStore()?.kinds.add(kind);
  }

  /**
   * Keeps facts, all or none. One that was told before under the same key is given back as it is.
   *
   * @param fieldOf the path of a field of the k-th fact in what the client sent
   */
  async tell(
    farmId: string,
    all: readonly Said[],
    fieldOf = (k: number, field: string): string => `facts.${k}.${field}`,
  ): Promise<ToldFact[]> {
    const raises = all.some(({ kind }) => !leavesPlans(kind));
    const keep = async (manager: EntityManager): Promise<ToldFact[]> => {
      if (all.length === 0) return [];
      const farm = await knownOf(manager, farmId);
      await this.room.check(manager, farmId, all.length, fieldOf);
      const kept = await keepFacts(manager, farmId, all, { farm, fieldOf });
      const told = kept.filter(({ isNew }) => isNew).map(({ fact }) => fact);
      await this.settle(manager, farmId, told, (fact, field) =>
        fieldOf(
          Math.max(
            0,
            kept.findIndex((each) => each.fact.id === fact.id),
          ),
          field,
        ),
      );
      this.noteTold(all.map(({ kind }) => kind));
      return kept.map(({ fact }) => fact);
    };
    return this.telling(farmId, keep, { raises });
  }

  /** One fact. @throws NotFoundException when the farm was told none with the id */
  async findOne(farmId: string, id: string): Promise<ToldFact> {
    const row = isId(id)
      ? await this.database.manager.findOneBy(ToldFactEntity, { id, farmId })
      : null;
    if (!row) throw notTold(id);
    return toFact(row);
  }

  /** Takes a fact back: what it had replaced holds again. Taking it back twice is the same. */
  async takeBack(farmId: string, id: string): Promise<void> {
    // What a fact is never changes: it can be read before the write whose revision hangs on it.
    const row = isId(id)
      ? await this.database.manager.findOneBy(ToldFactEntity, { id, farmId })
      : null;
    const raises = !row || !leavesPlans(row.kind) || isMovesKey(row.about);
    const takeBack = async (manager: EntityManager): Promise<void> => {
      if (!row) throw notTold(id);
      const where = { id, farmId, takenBackAt: IsNull() };
      if (!(await manager.existsBy(ToldFactEntity, where))) return;
      await this.takeBackAll(farmId, [id]);
      if (row.kind === 'work-progress') await this.takeBackUndone(farmId, row.about);
      if (isMovesKey(row.about)) await this.takeBackMoved(farmId, row.about, row.on);
      await this.settle(manager, farmId, [toFact(row)], () => 'id', { areNew: false });
      this.noteTold([row.kind]);
    };
    await this.telling(farmId, takeBack, { raises });
  }

  /** What work that is not done any more had told of paddocks and herds. */
  private async takeBackUndone(farmId: string, key: string): Promise<void> {
    if (!isMowingWork(key) && !isTurnOutWork(key)) return;
    const facts = holding(await this.factsAbout(farmId, key, ['work-progress']));
    const isDone = facts.some(({ details }) => details.doneOn !== undefined);
    if (isDone) return;
    await this.takeBackMown(farmId, key);
    await this.takeBackMoved(farmId, key);
  }

  /** Takes back the move of a herd that the tick of a piece of work told, or of a chore on a day. */
  async takeBackMoved(farmId: string, key: string, on?: PlainDate): Promise<void> {
    if (!isMovesKey(key) && !isTurnOutWork(key)) return;
    await this.takeBackAbout(
      farmId,
      'herd-move',
      (fact) => fact.details.work === key && (on === undefined || fact.on === on),
    );
  }

  /** Takes back what the tick of mowing told of its paddocks. */
  async takeBackMown(farmId: string, key: string): Promise<void> {
    if (!isMowingWork(key)) return;
    await this.takeBackAbout(farmId, 'paddock-mown', ({ details }) => details.work === key);
  }

  /** Takes facts back, whatever they had replaced as well. */
  async takeBackAbout<Kind extends ToldKind>(
    farmId: string,
    kind: Kind,
    isMeant: (fact: FactOf<Kind>) => boolean,
  ): Promise<void> {
    await this.telling(farmId, async (manager) => {
      this.noteTold([kind]);
      const meant = (await this.factsOf(farmId, kind)).filter(isMeant);
      await this.takeBackAll(
        farmId,
        meant.map(({ id }) => id),
      );
      await this.settle(manager, farmId, meant, () => 'key', { areNew: false });
    });
  }

  /** Gives the readings of a paddock to those it was cut into; they stay told of the whole as well. */
  async carryOver(farmId: string, from: string, to: readonly string[]): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const held = holding(await this.factsOf(farmId, 'grass-reading')).filter(
        ({ about }) => about === from,
      );
      const rows = to.flatMap((about) =>
        held.map(({ replaces: _replaces, ...fact }) => {
          const id = randomUUID();
          return { ...fact, farmId, about, id, key: id };
        }),
      );
      await manager.save(manager.create(ToldFactEntity, rows), { chunk: ROWS_AT_ONCE });
    });
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

  /** Moves of herds that were not taken back. */
  async movesOf(farmId: string): Promise<readonly HerdMove[]> {
    if (this.database.isWriting) return this.factsOf(farmId, 'herd-move');
    const revision = await revisionOf(this.database.manager, farmId);
    const known = this.keptMoves.at(farmId, revision);
    if (known) return known;
    return this.database.snapshot(async (manager) => {
      const moves = await this.factsOf(farmId, 'herd-move');
      this.keptMoves.set(farmId, await revisionOf(manager, farmId), moves);
      return moves;
    });
  }

  /** The same within a write, with those that were told in it just now; undefined: some were taken back. */
  private async movesWith(
    manager: EntityManager,
    farmId: string,
    told: readonly HerdMove[] | undefined,
  ): Promise<readonly HerdMove[]> {
    const alone = this.alone.getStore();
    const before =
      alone && told
        ? (alone.moves ?? this.keptMoves.at(farmId, (await revisionOf(manager, farmId)) - 1))
        : undefined;
    const all = before && told ? [...before, ...told] : await this.factsOf(farmId, 'herd-move');
    if (alone) alone.moves = all;
    return all;
  }

  /** The same of what is about one thing. */
  factsAbout<Kind extends ToldKind>(
    farmId: string,
    about: string,
    kinds: readonly Kind[],
  ): Promise<FactOf<Kind>[]> {
    return factsIn(this.rows(farmId).andWhere('f.about = :about', { about }), kinds);
  }

  /**
   * Facts of some kinds of a batch and of its work, and what was bought since a day, as `factsOf`
   * gives them.
   */
  async factsOfBatch(
    farmId: string,
    batchId: string,
    { kinds, since }: { readonly kinds: readonly ToldKind[]; readonly since: PlainDate },
  ): Promise<ToldFact[]> {
    // Asked apart: each is found by an index of its own, without reading all years.
    const work = this.rows(farmId)
      .andWhere('f.on >= :since', { since })
      .andWhere('f.about LIKE :work', { work: `batch/${batchId}/%` });
    return [
      ...(await this.factsAbout(farmId, batchId, kinds)),
      ...(await factsIn(work, ['work-progress'])),
      ...(await this.factsSince(farmId, since, ['bought'])),
    ].sort(byTelling);
  }

  /** Facts of some kinds of a calendar year that were not taken back, in the order they were told. */
  async factsOfYear(farmId: string, year: number, kinds: readonly ToldKind[]): Promise<ToldFact[]> {
    const query = this.rows(farmId).andWhere('f.on >= :first AND f.on <= :last', {
      first: `${year}-01-01`,
      last: `${year}-12-31`,
    });
    return factsIn(query.andWhere(withoutReplaced(query)), kinds);
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

  /** What hangs on all that was told: where herds stand, how many birds there are. */
  private async settle(
    manager: EntityManager,
    farmId: string,
    told: readonly ToldFact[],
    fieldOf: (fact: ToldFact, field: string) => string,
    { areNew = true } = {},
  ): Promise<void> {
    const moved = told.filter((fact): fact is HerdMove => fact.kind === 'herd-move');
    if (0 < moved.length) {
      const all = await this.movesWith(manager, farmId, areNew ? moved : undefined);
      const field = fieldOf(moved[0]!, 'details.paddockId');
      await settlePlaces(manager, farmId, { changed: moved, all }, field);
    }
    const eggs = told.filter((fact): fact is EggsWereCounted => fact.kind === 'eggs-counted');
    await refuseStrangeEggs(manager, farmId, { eggs, tables: this.tables.tables }, fieldOf);
    const weighed = areNew ? told.filter((fact) => fact.kind === 'weighed') : [];
    const heads: HeadsChanged[] = [];
    for (const id of new Set(weighed.map(({ about }) => about)))
      heads.push(...(await this.factsAbout(farmId, id, HEAD_CHANGES)));
    const known = { weighed, heads: headChangesOf(heads), tables: this.tables.tables };
    await refuseStrangeWeights(manager, farmId, known, fieldOf);
    const notes = told.filter((fact): fact is FactOf<'note'> => fact.kind === 'note');
    await settlePhotos(manager, farmId, notes, fieldOf);
    const left = told.filter((fact): fact is CattleWent => fact.kind === 'cattle-left');
    if (0 < left.length) {
      const all = await this.factsOf(farmId, 'cattle-left');
      const now = areNew ? { told: left, back: [] } : { told: [], back: left };
      await settleCattle(manager, farmId, { ...now, all }, fieldOf);
    }
    const counted = told.filter(changesHeads);
    if (0 < counted.length) {
      const all: HeadsChanged[] = [];
      for (const id of new Set(counted.map(({ about }) => about)))
        all.push(...(await this.factsAbout(farmId, id, HEAD_CHANGES)));
      const { tables } = this.tables;
      await settleHeads(manager, farmId, { changed: counted, all, tables }, fieldOf);
    }
  }

  private rows(farmId: string): SelectQueryBuilder<ToldFactEntity> {
    return factRows(this.database.manager, farmId);
  }

  private async takeBackAll(farmId: string, ids: readonly string[]): Promise<void> {
    const takenBackAt = new Date().toISOString();
    await this.database.write(farmId, async (manager) => {
      for (const id of ids) {
        await manager.update(
          ToldFactEntity,
          { id, farmId, takenBackAt: IsNull() },
          { takenBackAt },
        );
      }
    });
  }
}

async function revisionOf(manager: EntityManager, farmId: string): Promise<number> {
  const where = { id: farmId };
  const select = { id: true, revision: true } as const;
  return (await manager.findOneOrFail(FarmEntity, { where, select })).revision;
}

const notTold = (id: string): NotFoundException =>
  new NotFoundException(`This farm was told nothing with the id "${id.slice(0, 64)}".`);

async function knownOf(manager: EntityManager, farmId: string): Promise<ToldOn> {
  const { timeZone } = await manager.findOneOrFail(FarmEntity, {
    where: { id: farmId },
    select: { id: true, timeZone: true },
  });
  const idsOf = async (
    target: typeof BatchEntity | typeof HerdEntity | typeof PaddockEntity,
  ): Promise<string[]> =>
    (await manager.find(target, { where: { farmId }, select: { id: true } })).map(({ id }) => id);
  return {
    today: plainDateAt(Date.now(), timeZone),
    batchIds: await idsOf(BatchEntity),
    herdIds: await idsOf(HerdEntity),
    paddockIds: await idsOf(PaddockEntity),
  };
}
