import { Injectable } from '@nestjs/common';
import type { Saved } from '../../shared/farm/saved.js';
import type { Supplier } from '../../shared/farm/supplier.js';
import type { Expected } from '../common/expected-version.js';
import { Database } from '../database/database.js';
import { ProductEntity } from '../products/product.entity.js';
import { RowsOfFarm } from '../rows/rows-of-farm.js';
import type { SupplierDto } from './supplier.dto.js';
import { SupplierEntity, toSupplier } from './supplier.entity.js';

/** Where the place buys its feed, and what a trip there costs. */
@Injectable()
export class SuppliersService extends RowsOfFarm<SupplierEntity, Saved<Supplier>, SupplierDto> {
  constructor(database: Database) {
    super(database, SupplierEntity, {
      noun: 'supplier',
      order: ['name', 'id'],
      view: toSupplier,
    });
  }

  /** Deletes a supplier; products that named it no longer do. */
  override remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected, async (manager) => {
      const products = await manager.findBy(ProductEntity, { farmId });
      const changed = products.filter(({ details }) => details['supplierId'] === id);
      for (const product of changed) {
        const { supplierId: _gone, ...rest } = product.details;
        product.details = rest;
      }
      if (0 < changed.length) await manager.save(changed);
    });
  }

  protected valuesOf(_farmId: string, sent: SupplierDto) {
    const { id: _id, version: _version, name, ...details } = sent;
    return { name, details };
  }
}
