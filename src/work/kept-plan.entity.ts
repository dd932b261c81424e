import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { KeptPlan } from '../../shared/farm/kept-plan.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** The last plan of the work made on a day, so that the next stays with it and says what moved. */
@Entity('kept_plans')
export class KeptPlanEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @PrimaryColumn({ type: 'date' }) plannedOn!: string;
  @Column({ type: 'simple-json' }) jobs!: KeptPlan['jobs'];
  @Column({ type: 'varchar', length: 16, nullable: true }) madeFor!: string | null;
  @Column({ type: 'varchar', length: 16, nullable: true }) madeBy!: string | null;
}

export const toKeptPlan = ({ plannedOn, jobs, madeFor, madeBy }: KeptPlanEntity): KeptPlan => ({
  plannedOn,
  jobs,
  ...(madeFor === null ? {} : { madeFor }),
  ...(madeBy === null ? {} : { madeBy }),
});
