import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Herd } from '../../shared/farm/herd.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One herd. The name is a column for lists; the rest is as sent. Where it stands is told. */
@Entity('herds')
export class HerdEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('herds_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Herd, 'id' | 'name' | 'inPaddockId' | 'inSince'>;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toHerd = ({ id, name, details, version }: HerdEntity): Saved<Herd> => ({
  ...details,
  id,
  name,
  version,
});
