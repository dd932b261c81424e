import { Injectable } from '@nestjs/common';
import type { Product } from '../../shared/farm/product.js';
import type { Saved } from '../../shared/farm/saved.js';
import { checkProduct } from '../../shared/plan/check-products.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { OwnedRows } from '../rows/owned-rows.js';
import { checkSentProduct } from './product.dto.js';
import { ProductEntity, toProduct } from './product.entity.js';

/** What the place buys for its birds, with the price and the size it is sold in. */
@Injectable()
export class ProductsService {
  private readonly rows: OwnedRows<ProductEntity>;

  constructor(
    private readonly database: Database,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(database, ProductEntity, {
      noun: 'product',
      order: { kind: 'ASC', name: 'ASC', id: 'ASC' },
      view: toProduct,
    });
  }

  async create(farmId: string, body: unknown): Promise<Saved<Product>> {
    return toProduct(await this.rows.create(farmId, this.valuesOf(body)));
  }

  async findAll(farmId: string): Promise<Saved<Product>[]> {
    return (await this.rows.findAll(farmId)).map(toProduct);
  }

  async findOne(farmId: string, id: string): Promise<Saved<Product>> {
    return toProduct(await this.rows.findOne(farmId, id));
  }

  update(farmId: string, id: string, body: unknown, expected?: Expected): Promise<Saved<Product>> {
    return this.database.write(farmId, async () => {
      const values = this.valuesOf(body);
      const before = await this.rows.findOne(farmId, id);
      if (before.kind !== values.kind) throw otherKind(before.kind, values.kind);
      return toProduct(await this.rows.update(farmId, id, values, expected));
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }

  private valuesOf(body: unknown): Pick<ProductEntity, 'kind' | 'name' | 'details'> {
    const product = checkSentProduct(body);
    checkProduct(product, this.tables.tables);
    const { id: _id, version: _version, kind, name, ...details } = product;
    return { kind, name, details };
  }
}

const otherKind = (is: string, given: string): FieldError =>
  new FieldError([
    {
      field: 'kind',
      code: 'conflict',
      given,
      fix: `This is ${is}: add a new product for ${given}, and delete this one if it is no longer bought.`,
    },
  ]);
