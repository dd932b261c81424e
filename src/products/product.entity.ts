import { Column, Entity, Index } from 'typeorm';
import type { Product, ProductKind } from '../../shared/farm/product.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One thing the place buys. What only its kind has lies in `details`. */
@Entity('products')
@Index('products_farm', ['farmId'])
export class ProductEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 16 }) kind!: ProductKind;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Record<string, unknown>;
}

export function toProduct({ id, kind, name, details, version }: ProductEntity): Saved<Product> {
  return { ...details, id, kind, name, version } as unknown as Saved<Product>;
}
