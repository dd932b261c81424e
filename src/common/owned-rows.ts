import { NotFoundException } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type {
  DataSource,
  DeepPartial,
  EntityManager,
  EntityTarget,
  FindOptionsOrder,
  FindOptionsWhere,
} from 'typeorm';
import { MAX_LIST } from '../../shared/farm/bounds.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { FarmEntity } from '../farms/farm.entity.js';

export interface OwnedRow {
  id: string;
  farmId: string;
}

/**
 * The rows of one kind that belong to a farm. Every read and write names the farm, so that the id
 * of another farm's row is simply not found; every write raises the farm's revision with it.
 */
export class OwnedRows<Row extends OwnedRow> {
  constructor(
    private readonly source: DataSource,
    private readonly target: EntityTarget<Row>,
    /** What one row is called in messages. */
    private readonly noun: string,
    private readonly order: FindOptionsOrder<Row>,
  ) {}

  async create(farmId: string, values: Omit<Row, 'id' | 'farmId'>): Promise<Row> {
    const [row] = await this.createAll(farmId, [{ ...values, id: randomUUID() }]);
    return row!;
  }

  /**
   * Makes several rows, or none.
   *
   * @param check looks at the rows there are and throws when the new ones do not go with them
   */
  async createAll(
    farmId: string,
    all: readonly (Omit<Row, 'id' | 'farmId'> & { id: string })[],
    check: (before: readonly Row[]) => void = () => undefined,
  ): Promise<Row[]> {
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(this.target);
      const before = await rows.findBy({ farmId } as FindOptionsWhere<Row>);
      check(before);
      if (MAX_LIST < before.length + all.length) {
        throw new FieldError([
          {
            field: this.noun,
            code: 'out-of-bounds',
            given: before.length + all.length,
            max: MAX_LIST,
            fix: `Delete a ${this.noun} that is no longer needed first.`,
          },
        ]);
      }
      return rows.save(
        rows.create(all.map((values) => ({ ...values, farmId })) as unknown as DeepPartial<Row>[]),
      );
    });
  }

  /** Deletes every row that is asked for, and nothing when there is none. */
  async removeAll(farmId: string, isAskedFor: (row: Row) => boolean): Promise<void> {
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(this.target);
      const all = await rows.findBy({ farmId } as FindOptionsWhere<Row>);
      await rows.remove(all.filter(isAskedFor));
    });
  }

  async findAll(farmId: string): Promise<Row[]> {
    checkId(farmId);
    const rows = await this.source
      .getRepository(this.target)
      .find({ where: { farmId } as FindOptionsWhere<Row>, order: this.order });
    if (
      rows.length === 0 &&
      !(await this.source.getRepository(FarmEntity).existsBy({ id: farmId }))
    ) {
      throw farmNotFound(farmId);
    }
    return rows;
  }

  async findOne(farmId: string, id: string): Promise<Row> {
    checkId(farmId);
    if (!isId(id)) throw this.notFound(id);
    const row = await this.source
      .getRepository(this.target)
      .findOneBy({ id, farmId } as FindOptionsWhere<Row>);
    if (!row) throw this.notFound(id);
    return row;
  }

  async update(farmId: string, id: string, values: Omit<Row, 'id' | 'farmId'>): Promise<Row> {
    if (!isId(id)) throw this.notFound(id);
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(this.target);
      const row = await rows.findOneBy({ id, farmId } as FindOptionsWhere<Row>);
      if (!row) throw this.notFound(id);
      return rows.save(Object.assign(row, values));
    });
  }

  /** Deletes a row; `after` runs in the same transaction. */
  async remove(
    farmId: string,
    id: string,
    after?: (manager: EntityManager) => Promise<void>,
  ): Promise<void> {
    if (!isId(id)) throw this.notFound(id);
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const { affected } = await manager
        .getRepository(this.target)
        .delete({ id, farmId } as FindOptionsWhere<Row>);
      if (affected === 0) throw this.notFound(id);
      await after?.(manager);
    });
  }

  private notFound(id: string): NotFoundException {
    return new NotFoundException(`This farm has no ${this.noun} with the id "${id.slice(0, 64)}".`);
  }
}

/** Ids as this program makes them. A database may refuse other text, such as one with a zero byte. */
export const isId = (text: string): boolean => /^[A-Za-z0-9-]{1,64}$/.test(text);

export function checkId(farmId: string): void {
  if (!isId(farmId)) throw farmNotFound(farmId);
}

/** Marks a farm as changed, or says that there is no such farm. */
export async function raiseRevision(manager: DataSource['manager'], farmId: string): Promise<void> {
  checkId(farmId);
  const { affected } = await manager
    .getRepository(FarmEntity)
    .increment({ id: farmId }, 'revision', 1);
  if (affected === 0) throw farmNotFound(farmId);
}

export const farmNotFound = (id: string): NotFoundException =>
  new NotFoundException(`There is no farm with the id "${id.slice(0, 64)}".`);
