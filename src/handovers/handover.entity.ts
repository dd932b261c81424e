import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Handover } from '../../shared/farm/handover.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** Days that are handed to a sitter. The first day is a column for lists; the rest is as sent. */
@Entity('handovers')
export class HandoverEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('handovers_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'date' }) firstDay!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Handover, 'id' | 'from'>;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toHandover = ({
  id,
  firstDay,
  details,
  version,
}: HandoverEntity): Saved<Handover> => ({
  ...details,
  id,
  from: firstDay,
  version,
});
