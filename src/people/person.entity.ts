import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import { personFields, type Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import { columnsOf, fromColumns } from '../common/columns-of.js';
import { FarmEntity } from '../farms/farm.entity.js';

@Entity('people')
export class PersonEntity extends columnsOf(personFields) {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('people_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toPerson = (row: PersonEntity): Saved<Person> => ({
  ...fromColumns(personFields, row),
  id: row.id,
  version: row.version,
});
