import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One paddock. The name is a column for lists; the rest is as sent. */
@Entity('paddocks')
export class PaddockEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('paddocks_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Paddock, 'id' | 'name'> & {
    /** When the day it was last grazed was typed: moves told later count beside it. */
    lastGrazedTypedAt?: string;
  };
  @VersionColumn({ default: 1 }) version!: number;
}

export const toPaddock = ({
  id,
  name,
  details: { lastGrazedTypedAt: _typedAt, ...details },
  version,
}: PaddockEntity): Saved<Paddock> => ({
  ...details,
  id,
  name,
  version,
});
