import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Product, ProductKind } from '../../shared/farm/product.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One thing the place buys. What only its kind has lies in `details`. */
@Entity('products')
export class ProductEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('products_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 16 }) kind!: ProductKind;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Record<string, unknown>;
  @VersionColumn({ default: 1 }) version!: number;
}

export function toProduct({ id, kind, name, details, version }: ProductEntity): Saved<Product> {
  return { ...details, id, kind, name, version } as unknown as Saved<Product>;
}
