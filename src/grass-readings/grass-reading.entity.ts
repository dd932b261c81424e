import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { GrassReading } from '../../shared/farm/paddock.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** A height read in a paddock on a day. */
@Entity('grass_readings')
export class GrassReadingEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('grass_readings_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 64 }) paddockId!: string;
  @Column({ type: 'date' }) date!: string;
  @Column({ type: 'double precision' }) heightCm!: number;
}

export const toReading = ({ id, paddockId, date, heightCm }: GrassReadingEntity): GrassReading => ({
  id,
  paddockId,
  date,
  heightCm,
});
