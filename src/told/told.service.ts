import { Injectable } from '@nestjs/common';
import { AsyncLocalStorage } from 'node:async_hooks';
import { randomUUID } from 'node:crypto';
import { IsNull, type EntityManager } from 'typeorm';
import { plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import {
  holding,
  type FactOf,
  type HerdMove,
  type ToldFact,
  type ToldKind,
} from '../../shared/farm/told-fact.js';
import { isMovesKey, isTurnOutWork, movesKey } from '../../shared/farm/herd-move-work.js';
import { isMowingWork } from '../../shared/farm/mowing.js';
import { TOLD_KINDS, type ToldOn } from '../../shared/farm/told-kinds.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { isId } from '../database/ids.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { FactsOfFarm, notTold } from './facts-of-farm.js';
import { keepFacts, type Said } from './keep-facts.js';
import { KeptAtRevision } from './kept-at-revision.js';
import { namesOfFarm, type NamesOfFarm } from './names-of-farm.js';
import { RoomForFacts } from './room-for-facts.js';
import { settleTold } from './settle-told.js';
import { toFact, ToldFactEntity } from './told-fact.entity.js';

const leavesPlans = (kind: ToldKind): boolean => TOLD_KINDS[kind].leavesPlans === true;
const ROWS_AT_ONCE = 200;

/** What was told so far in a write in which nothing but telling happens. */
interface ToldAlone {
  readonly kinds: Set<ToldKind>;
  /** The farm's revision before it. */
  before: number;
  /** All moves of the farm, where one was among it. */
  moves?: readonly HerdMove[];
}

/** Keeps what is told of a farm. Nothing is ever overwritten or deleted: it is taken back. */
@Injectable()
export class ToldService extends FactsOfFarm {
  private readonly alone = new AsyncLocalStorage<ToldAlone>();
  private readonly room = new RoomForFacts();
  private readonly keptNames = new KeptAtRevision<NamesOfFarm>(this.changes, []);

  constructor(
    database: Database,
    private readonly tables: TablesService,
  ) {
    super(database);
  }

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
    const told: ToldAlone = { kinds: new Set(), before: 0 };
    let revision = 0;
    const writeAll = (manager: EntityManager, now: number): Promise<T> => {
      revision = now;
      told.before = raises ? revision - 1 : revision;
      return work(manager);
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
      const farm = toldOn(await this.namesOf(manager, farmId));
      await this.room.check(manager, farmId, all.length, fieldOf);
      const kept = await keepFacts(manager, farmId, all, {
        ...{ farm, fieldOf },
        tables: this.tables.tables,
      });
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

  /** Takes a fact back: what it had replaced holds again. Taking it back twice is the same. */
  async takeBack(farmId: string, id: string): Promise<void> {
    // What a fact is never changes: it can be read before the write whose revision hangs on it.
    const row = isId(id)
      ? await this.database.manager.findOneBy(ToldFactEntity, { id, farmId })
      : null;
    const raises = !row || !leavesPlans(row.kind) || isMovesKey(row.about);
    const takeBack = async (manager: EntityManager): Promise<void> => {
      if (!row) throw notTold(id);
      if (row.kind === 'row-changed') throw notTakenBack(row);
      const where = { id, farmId, takenBackAt: IsNull() };
      if (!(await manager.existsBy(ToldFactEntity, where))) return;
      await this.takeBackAll(farmId, [id]);
      if (row.kind === 'work-progress') await this.takeBackUndone(farmId, row.about);
      if (isMovesKey(row.about)) await this.takeBackMoved(farmId, row.about, row.on);
      const { work, tickedOn } = toldWith(row);
      // The moves before it that were told with it.
      if (work !== undefined && tickedOn === undefined)
        await this.takeBackMoved(farmId, work, row.on);
      if (row.kind === 'herd-move' && work === undefined) await this.takeBackBefore(farmId, row);
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

  /** Takes back the moves of a herd that the tick of a piece of work told, or of a chore on a day. */
  async takeBackMoved(farmId: string, key: string, on?: PlainDate): Promise<void> {
    if (!isMovesKey(key) && !isTurnOutWork(key)) return;
    await this.takeBackAbout(
      farmId,
      'herd-move',
      ({ on: day, details: { work, tickedOn = day } }) =>
        work === key && (on === undefined || tickedOn === on),
    );
  }

  /** Takes back the moves that were told with one that was told by itself: where none holds that day. */
  private async takeBackBefore(
    farmId: string,
    { about, on }: Pick<ToldFactEntity, 'about' | 'on'>,
  ): Promise<void> {
    const left = (await this.factsAbout(farmId, about, ['herd-move'])).some(
      (move) => move.on === on && move.details.tickedOn === undefined,
    );
    if (!left) await this.takeBackMoved(farmId, movesKey(about), on);
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

  /** The same within a write, with those that were told in it just now; undefined: some were taken back. */
  private async movesWith(
    farmId: string,
    told: readonly HerdMove[] | undefined,
  ): Promise<readonly HerdMove[]> {
    const alone = this.alone.getStore();
    const before =
      alone && told ? (alone.moves ?? this.keptMoves.at(farmId, alone.before)) : undefined;
    const all = before && told ? [...before, ...told] : await this.factsOf(farmId, 'herd-move');
    if (alone) alone.moves = all;
    return all;
  }

  /** In a write in which other rows may have changed they are read anew. */
  private async namesOf(manager: EntityManager, farmId: string): Promise<NamesOfFarm> {
    const alone = this.alone.getStore();
    const known = alone && this.keptNames.at(farmId, alone.before);
    if (known) return known;
    const names = await namesOfFarm(manager, farmId);
    if (alone) this.keptNames.set(farmId, alone.before, names);
    return names;
  }

  /** What hangs on all that was told, in the same write. */
  private settle(
    manager: EntityManager,
    farmId: string,
    told: readonly ToldFact[],
    fieldOf: (fact: ToldFact, field: string) => string,
    { areNew = true } = {},
  ): Promise<void> {
    const { tables } = this.tables;
    const movesWith = (moved: readonly HerdMove[] | undefined) => this.movesWith(farmId, moved);
    const namesOf = () => this.namesOf(manager, farmId);
    const now = { told, areNew, facts: this, movesWith, namesOf, tables };
    return settleTold(manager, farmId, now, fieldOf);
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

/** The row would stay as it is. */
const notTakenBack = ({ id }: ToldFactEntity): FieldError =>
  new FieldError([
    {
      field: 'id',
      code: 'conflict',
      given: id,
      fix: 'Change the person, animals, paddock, gear, price or job itself back: that tells it anew.',
    },
  ]);

/** The tick or the form that told a move. */
const toldWith = ({
  kind,
  details,
}: ToldFactEntity): Pick<HerdMove['details'], 'work' | 'tickedOn'> =>
  kind === 'herd-move' ? (details as HerdMove['details']) : {};

const idsOf = (rows: readonly { readonly id: string }[]): string[] => rows.map(({ id }) => id);

const toldOn = ({ timeZone, batches, herds, paddocks }: NamesOfFarm): ToldOn => ({
  today: plainDateAt(Date.now(), timeZone),
  batchIds: idsOf(batches),
  herdIds: idsOf(herds),
  paddockIds: idsOf(paddocks),
});
