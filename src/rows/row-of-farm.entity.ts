import { Column, JoinColumn, ManyToOne, PrimaryColumn, VersionColumn } from 'typeorm';
import { FarmEntity } from '../farms/farm.entity.js';

/** What every row has that a household changes by itself: an id, its farm and its version. */
export class RowOfFarm {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @VersionColumn({ default: 1 }) version!: number;
}
