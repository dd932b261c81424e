import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** Work the household set itself. The name is a column for lists; the rest is as sent. */
@Entity('jobs')
export class JobEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('jobs_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<OwnJob, 'id' | 'name'>;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toJob = ({ id, name, details, version }: JobEntity): Saved<OwnJob> => ({
  ...details,
  id,
  name,
  version,
});
