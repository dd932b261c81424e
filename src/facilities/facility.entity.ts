import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Facility, FacilityKind } from '../../shared/farm/facility.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One facility. What only its kind has lies in `details`, checked by that kind's DTO. */
@Entity('facilities')
export class FacilityEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('facilities_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 16 }) kind!: FacilityKind;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Record<string, unknown>;
  @VersionColumn({ default: 1 }) version!: number;
}

export function toFacility({ id, kind, name, details, version }: FacilityEntity): Saved<Facility> {
  return { ...details, id, kind, name, version } as unknown as Saved<Facility>;
}
