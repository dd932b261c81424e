import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One batch. The fields that lists sort and show are columns; the rest is the order as sent. */
@Entity('batches')
export class BatchEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('batches_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'date' }) arrivalDate!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Batch, 'id' | 'name' | 'arrivalDate'>;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toBatch = ({
  id,
  name,
  arrivalDate,
  details,
  version,
}: BatchEntity): Saved<Batch> => ({
  ...details,
  id,
  name,
  arrivalDate,
  version,
});
