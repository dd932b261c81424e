import { Column, Entity, Index } from 'typeorm';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One batch. The fields that lists sort and show are columns; the rest is the order as sent. */
@Entity('batches')
@Index('batches_farm', ['farmId'])
export class BatchEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'date' }) arrivalDate!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Batch, 'id' | 'name' | 'arrivalDate'>;
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
