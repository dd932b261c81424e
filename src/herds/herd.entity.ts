import { Column, Entity, Index } from 'typeorm';
import type { Herd } from '../../shared/farm/herd.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One herd. The name is a column for lists; the rest is as sent. Where it stands is told. */
@Entity('herds')
@Index('herds_farm', ['farmId'])
export class HerdEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Herd, 'id' | 'name' | 'inPaddockId' | 'inSince'>;
}

export const toHerd = ({ id, name, details, version }: HerdEntity): Saved<Herd> => ({
  ...details,
  id,
  name,
  version,
});
