import { Column, Entity, Index } from 'typeorm';
import type { Facility, FacilityKind } from '../../shared/farm/facility.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One facility. What only its kind has lies in `details`, checked by that kind's DTO. */
@Entity('facilities')
@Index('facilities_farm', ['farmId'])
export class FacilityEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 16 }) kind!: FacilityKind;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Record<string, unknown>;
}

export function toFacility({ id, kind, name, details, version }: FacilityEntity): Saved<Facility> {
  return { ...details, id, kind, name, version } as unknown as Saved<Facility>;
}
