import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { GroundLook } from '../../shared/farm/ground-look.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** What the household found when it looked at the ground, one look a day. */
@Entity('ground_looks')
export class GroundLookEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @PrimaryColumn({ type: 'date' }) date!: string;
  @Column({ type: 'boolean' }) isWorkable!: boolean;
}

export const toGroundLook = ({ date, isWorkable }: GroundLookEntity): GroundLook => ({
  date,
  isWorkable,
});
