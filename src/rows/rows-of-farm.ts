import type { EntityTarget } from 'typeorm';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import type { Database } from '../database/database.js';
import { OwnedRows, type KindOfRow, type OwnedRow, type Values } from './owned-rows.js';

/**
 * Adds, lists, reads, changes and deletes the rows of one kind that belong to a farm. The service of
 * a kind extends it, and says what of a body is written and what is refused.
 */
export abstract class RowsOfFarm<Row extends OwnedRow, Seen, Sent> {
  protected readonly rows: OwnedRows<Row>;
  private readonly view: (row: Row) => Seen;

  constructor(
    protected readonly database: Database,
    target: EntityTarget<Row>,
    kind: KindOfRow<Row> & { readonly view: (row: Row) => Seen },
  ) {
    this.rows = new OwnedRows(database, target, kind);
    this.view = kind.view;
  }

  /**
   * What is written of a body.
   *
   * @param before the row that is changed; undefined for a new one
   * @throws FieldError with what is wrong with it
   */
  protected abstract valuesOf(
    farmId: string,
    sent: Sent,
    before?: Row,
  ): Values<Row> | Promise<Values<Row>>;

  create(farmId: string, sent: Sent): Promise<Seen> {
    return this.database.write(farmId, async () =>
      this.view(await this.rows.create(farmId, await this.valuesOf(farmId, sent))),
    );
  }

  async findAll(farmId: string): Promise<Seen[]> {
    return (await this.rows.findAll(farmId)).map(this.view);
  }

  async findOne(farmId: string, id: string): Promise<Seen> {
    return this.view(await this.rows.findOne(farmId, id));
  }

  update(farmId: string, id: string, sent: Sent, expected?: Expected): Promise<Seen> {
    return this.database.write(farmId, async () => {
      const before = await this.rows.findOne(farmId, id);
      const values = await this.valuesOf(farmId, sent, before);
      return this.view(await this.rows.update(farmId, id, values, expected));
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }
}

/** @throws FieldError when a row would become one of another kind */
export function refuseOtherKind(before: string | undefined, given: string, fix: string): void {
  if (before === undefined || before === given) return;
  throw new FieldError([{ field: 'kind', code: 'conflict', given, fix }]);
}
