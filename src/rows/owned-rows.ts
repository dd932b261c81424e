import { NotFoundException } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { In } from 'typeorm';
import type { DeepPartial, EntityManager, EntityTarget, FindOptionsWhere } from 'typeorm';
import { MAX_LIST } from '../../shared/farm/bounds.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { refuseOutdated, type Expected } from '../common/expected-version.js';
import { checkId, farmNotFound, isId } from '../database/ids.js';
import { tellRow, type TellsOf } from './tell-row.js';
import { inOrderOf } from './in-order-of.js';

export interface OwnedRow {
  id: string;
  farmId: string;
  /** Goes up with every change of the row. */
  version: number;
}

/** A row without what this class fills in. */
export type Values<Row extends OwnedRow> = Omit<Row, keyof OwnedRow | 'farm'>;

/** What rows of one kind are called, sorted by and shown as. */
export interface KindOfRow<Row> {
  /** What one row is called in messages. */
  readonly noun: string;
  readonly order: readonly (keyof Row & string)[];
  /** The row as the API returns it. */
  readonly view: (row: Row) => unknown;
  /** What became of a row stands in the record. */
  readonly tells?: TellsOf<Row>;
  /** How many of the rows count toward the most there may be; all do when left out. */
  readonly count?: (farmId: string, rows: readonly Row[]) => Promise<number>;
}

/**
 * The rows of one kind that belong to a farm. Every read and write names the farm, so that the id
 * of another farm's row is simply not found; every write raises the farm's revision with it.
 */
export class OwnedRows<Row extends OwnedRow> {
  constructor(
    private readonly database: Database,
    private readonly target: EntityTarget<Row>,
    private readonly kind: KindOfRow<Row>,
  ) {}

  async create(farmId: string, values: Values<Row>): Promise<Row> {
    const [row] = await this.createAll(farmId, [{ ...values, id: randomUUID() }]);
    return row!;
  }

  /**
   * Makes several rows, or none.
   *
   * @param check looks at the rows there are and throws when the new ones do not go with them
   */
  createAll(
    farmId: string,
    all: readonly (Values<Row> & { id: string })[],
    check: (before: readonly Row[]) => void = () => undefined,
  ): Promise<Row[]> {
    return this.database.write(farmId, async (manager) => {
      const rows = manager.getRepository(this.target);
      const before = await rows.findBy({ farmId } as FindOptionsWhere<Row>);
      check(before);
      const { noun, count } = this.kind;
      const counted = count ? await count(farmId, before) : before.length;
      refuseTooMany(noun, counted + all.length);
      const made = await rows.save(
        rows.create(all.map((values) => ({ ...values, farmId })) as unknown as DeepPartial<Row>[]),
      );
      for (const after of this.kind.tells ? made : [])
        await tellRow(manager, this.kind.tells!, { after });
      return made;
    });
  }

  /** Deletes every row that is asked for, and nothing when there is none. */
  async removeAll(farmId: string, isAskedFor: (row: Row) => boolean): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const rows = manager.getRepository(this.target);
      const all = await rows.findBy({ farmId } as FindOptionsWhere<Row>);
      const gone = all.filter(isAskedFor).map((row) => ({ ...row }));
      await rows.remove(all.filter(isAskedFor));
      for (const before of this.kind.tells ? gone : [])
        await tellRow(manager, this.kind.tells!, { before });
    });
  }

  async findAll(farmId: string): Promise<Row[]> {
    checkId(farmId);
    const { manager } = this.database;
    const rows = await manager
      .getRepository(this.target)
      .findBy({ farmId } as FindOptionsWhere<Row>);
    if (rows.length === 0 && !(await manager.existsBy(FarmEntity, { id: farmId }))) {
      throw farmNotFound(farmId);
    }
    return rows.sort(inOrderOf(this.kind.order));
  }

  async findOne(farmId: string, id: string): Promise<Row> {
    checkId(farmId);
    if (!isId(id)) throw this.notFound(id);
    const row = await this.database.manager
      .getRepository(this.target)
      .findOneBy({ id, farmId } as FindOptionsWhere<Row>);
    if (!row) throw this.notFound(id);
    return row;
  }

  /** Several rows, in the order of the ids. */
  async findEach(farmId: string, ids: readonly string[]): Promise<Row[]> {
    checkId(farmId);
    const rows = await this.database.manager
      .getRepository(this.target)
      .findBy({ id: In(ids.filter(isId)), farmId } as FindOptionsWhere<Row>);
    return ids.map((id) => {
      const row = rows.find((each) => each.id === id);
      if (!row) throw this.notFound(id);
      return row;
    });
  }

  /**
   * Works something out from rows, which may take long, and then writes with it: all of it again
   * when one of the rows was changed meanwhile.
   *
   * @param work takes the rows in the order of the ids; no write waits for it
   */
  async workThenWrite<Found, Answer>(
    farmId: string,
    ids: readonly string[],
    work: (rows: readonly Row[]) => Promise<Found>,
    write: (manager: EntityManager, rows: readonly Row[], found: Found) => Promise<Answer>,
  ): Promise<Answer> {
    for (;;) {
      const rows = await this.findEach(farmId, ids);
      const found = await work(rows);
      const written = await this.database.write(farmId, async (manager) => {
        const now = await this.findEach(farmId, ids);
        const isAsBefore = now.every(({ version }, k) => version === rows[k]!.version);
        return isAsBefore ? { answer: await write(manager, now, found) } : undefined;
      });
      if (written) return written.answer;
    }
  }

  /** @throws ConflictError when the row is not the version that the change was made from */
  update(farmId: string, id: string, values: Values<Row>, expected: Expected = {}): Promise<Row> {
    return this.database.write(farmId, async (manager) => {
      const row = await this.findOne(farmId, id);
      await refuseOutdated(row.version, expected, () => this.kind.view(row));
      const before = structuredClone(row);
      const after = await manager.getRepository(this.target).save(Object.assign(row, values));
      if (this.kind.tells) await tellRow(manager, this.kind.tells, { before, after });
      return after;
    });
  }

  /** Deletes a row; `after` runs in the same transaction. */
  async remove(
    farmId: string,
    id: string,
    expected: Expected = {},
    after?: (manager: EntityManager) => Promise<void>,
  ): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const row = await this.findOne(farmId, id);
      await refuseOutdated(row.version, expected, () => this.kind.view(row));
      await manager.getRepository(this.target).delete({ id, farmId } as FindOptionsWhere<Row>);
      await after?.(manager);
      if (this.kind.tells) await tellRow(manager, this.kind.tells, { before: row });
    });
  }

  private notFound(id: string): NotFoundException {
    return new NotFoundException(
      `This farm has no ${this.kind.noun} with the id "${id.slice(0, 64)}".`,
    );
  }
}

/** @throws FieldError when a farm would have more rows of a kind than there may be */
export function refuseTooMany(noun: string, count: number, most = MAX_LIST): void {
  if (count <= most) return;
  throw new FieldError([
    {
      field: noun,
      code: 'out-of-bounds',
      given: count,
      max: most,
      fix: `Delete a ${noun} that is no longer needed first.`,
    },
  ]);
}
