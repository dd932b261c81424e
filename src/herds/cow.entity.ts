import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Cow } from '../../shared/farm/cow.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** One cow with a name. Herd and class are columns, as herds are checked by them; the rest is as sent. */
@Entity('cows')
export class CowEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('cows_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 64 }) herdId!: string;
  @Column({ type: 'varchar', length: 64 }) classId!: string;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Cow, 'id' | 'name' | 'herdId' | 'classId'>;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toCow = ({ id, name, herdId, classId, details, version }: CowEntity): Saved<Cow> => ({
  ...details,
  id,
  name,
  herdId,
  classId,
  version,
});
