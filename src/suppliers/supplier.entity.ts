import { Column, Entity, Index } from 'typeorm';
import type { Saved } from '../../shared/farm/saved.js';
import type { Supplier } from '../../shared/farm/supplier.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** Where the place buys feed. The name is a column for lists; the rest is as sent. */
@Entity('suppliers')
@Index('suppliers_farm', ['farmId'])
export class SupplierEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Supplier, 'id' | 'name' | 'version'>;
}

export const toSupplier = ({ id, name, details, version }: SupplierEntity): Saved<Supplier> => ({
  ...details,
  id,
  name,
  version,
});
