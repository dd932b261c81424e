import { Injectable } from '@nestjs/common';
import type { Product } from '../../shared/farm/product.js';
import type { Saved } from '../../shared/farm/saved.js';
import { checkProduct } from '../../shared/plan/check-products.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { refuseOtherKind, RowsOfFarm } from '../rows/rows-of-farm.js';
import { checkSentProduct } from './product.dto.js';
import { ProductEntity, toProduct } from './product.entity.js';

/** What the place buys for its birds, with the price and the size it is sold in. */
@Injectable()
export class ProductsService extends RowsOfFarm<ProductEntity, Saved<Product>, unknown> {
  constructor(
    database: Database,
    private readonly tables: TablesService,
  ) {
    super(database, ProductEntity, {
      noun: 'product',
      order: ['kind', 'name', 'id'],
      view: toProduct,
    });
  }

  protected valuesOf(_farmId: string, body: unknown, before?: ProductEntity) {
    const product = checkSentProduct(body);
    checkProduct(product, this.tables.tables);
    const { id: _id, version: _version, kind, name, ...details } = product;
    refuseOtherKind(
      before?.kind,
      kind,
      `This is ${before?.kind}: add a new product for ${kind}, and delete this one if it is no longer bought.`,
    );
    return { kind, name, details };
  }
}
