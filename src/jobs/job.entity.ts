import { Column, Entity, Index } from 'typeorm';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** Work the household set itself. The name is a column for lists; the rest is as sent. */
@Entity('jobs')
@Index('jobs_farm', ['farmId'])
export class JobEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<OwnJob, 'id' | 'name'>;
}

export const toJob = ({ id, name, details, version }: JobEntity): Saved<OwnJob> => ({
  ...details,
  id,
  name,
  version,
});
