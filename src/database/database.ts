import { Injectable, type OnModuleDestroy, type OnModuleInit } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { AsyncLocalStorage } from 'node:async_hooks';
import { DataSource, type EntityManager } from 'typeorm';
import { checkId, farmNotFound } from './ids.js';
import { readOnlyOptions } from './data-source.js';
import { raiseRevision } from './sql-of-rows.js';
import { Turns } from './turns.js';

/** What goes on around the code that asks for a manager. */
interface Surroundings {
  readonly manager: EntityManager;
  /** The farm that is written to; undefined in a snapshot, which writes nothing. */
  readonly writesTo?: string;
  /** Of that farm, as this write leaves it; a farm that is being made has none yet. */
  revision?: number;
  /** Set when it is over: what was left running by mistake must not use its connection. */
  isOver: boolean;
}

/** Writes that belong to no farm there is yet wait for each other. */
const NO_FARM = 'no farm';

/**
 * The one way to the database. Every write is one transaction on one connection, in which every
 * read sees what it wrote; a read elsewhere never sees what is not committed.
 *
 * SQLite has one connection that writes: writers wait their turn. Reads have connections of their
 * own (in WAL mode neither waits for the other). On PostgreSQL the writers of one farm wait here
 * rather than each on a connection of the pool, which a busy farm would use up.
 */
@Injectable()
export class Database implements OnModuleInit, OnModuleDestroy {
  private readonly around = new AsyncLocalStorage<Surroundings>();
  private readonly turns = new Turns();
  private readonly isSqlite: boolean;
  /** For reads outside a transaction, and for snapshots. */
  private readonly reading: DataSource;
  private readonly snapshots: DataSource;

  constructor(@InjectDataSource() private readonly writing: DataSource) {
    const readOnly = readOnlyOptions(writing.options);
    this.isSqlite = readOnly !== undefined;
    this.reading = readOnly ? new DataSource(readOnly) : writing;
    this.snapshots = readOnly ? new DataSource(readOnly) : writing;
  }

  async onModuleInit(): Promise<void> {
    for (const each of [this.reading, this.snapshots]) {
      if (!each.isInitialized) await each.initialize();
    }
  }

  async onModuleDestroy(): Promise<void> {
    // The connection that writes is closed last, so that it leaves one whole file behind.
    for (const each of [this.snapshots, this.reading]) {
      if (each !== this.writing && each.isInitialized) await each.destroy();
    }
  }

  /** For reads: the manager of the write or snapshot this is called in, else one that only reads. */
  get manager(): EntityManager {
    return this.open()?.manager ?? this.reading.manager;
  }

  /** Whether this is called in a write: what is told then is not all that changes. */
  get isWriting(): boolean {
    return this.open()?.writesTo !== undefined;
  }

  /**
   * Changes a farm, or nothing when `work` throws. The farm's row is locked first, so that what
   * `work` reads to decide holds until it is over. A write of the same farm within joins in.
   *
   * @param work is handed the farm's revision as this write leaves it
   * @param raises whether the farm's revision goes up: it must when a plan might change by it
   * @throws NotFoundException when there is no such farm
   */
  async write<T>(
    farmId: string,
    work: (manager: EntityManager, revision: number) => Promise<T>,
    { raises = true } = {},
  ): Promise<T> {
    checkId(farmId);
    const around = this.open();
    if (around) {
      if (around.writesTo === farmId) return work(around.manager, around.revision ?? 0);
      throw new Error('A write cannot begin in a snapshot, nor in a write of another farm.');
    }
    return this.inTurn(farmId, async (manager) => {
      const revision = await raiseRevision(manager.queryRunner!, farmId, raises ? 1 : 0);
      if (revision === undefined) throw farmNotFound(farmId);
      const here = this.open();
      if (here) here.revision = revision;
      return work(manager, revision);
    });
  }

  /**
   * Writes what belongs to no farm that is there already: a new farm, or the published tables.
   *
   * @param farmId of the new farm, where writes of it join in
   */
  async writeNew<T>(
    work: (manager: EntityManager) => Promise<T>,
    farmId: string = NO_FARM,
  ): Promise<T> {
    if (this.open()) throw new Error('A farm cannot be made within another write or a snapshot.');
    return this.inTurn(farmId, work);
  }

  /**
   * Several reads that see one and the same state. Await them one after another: they share a
   * connection. Within a write they see what the write sees.
   */
  async snapshot<T>(work: (manager: EntityManager) => Promise<T>): Promise<T> {
    const around = this.open();
    if (around) return work(around.manager);
    if (!this.isSqlite) {
      return this.snapshots.transaction('REPEATABLE READ', (manager) => this.within(manager, work));
    }
    return this.turns.take('snapshot', () =>
      this.snapshots.transaction((manager) => this.within(manager, work)),
    );
  }

  private inTurn<T>(farmId: string, work: (manager: EntityManager) => Promise<T>): Promise<T> {
    return this.turns.take(this.isSqlite ? 'write' : `write ${farmId}`, () =>
      this.writing.transaction((manager) => this.within(manager, work, farmId)),
    );
  }

  private async within<T>(
    manager: EntityManager,
    work: (manager: EntityManager) => Promise<T>,
    writesTo?: string,
  ): Promise<T> {
    const around: Surroundings = {
      manager,
      isOver: false,
      ...(writesTo === undefined ? {} : { writesTo }),
    };
    try {
      return await this.around.run(around, () => work(manager));
    } finally {
      around.isOver = true;
    }
  }

  private open(): Surroundings | undefined {
    const around = this.around.getStore();
    return around?.isOver ? undefined : around;
  }
}
