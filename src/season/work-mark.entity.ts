import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { WorkMark } from '../../shared/farm/job.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** What became of a piece of work, by its key. */
@Entity('work_marks')
export class WorkMarkEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @PrimaryColumn({ type: 'varchar', length: 200 }) key!: string;
  @Column({ type: 'simple-json' }) details!: Omit<WorkMark, 'key'>;
}
