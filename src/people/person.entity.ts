import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { personFields, type Person } from '../../shared/farm/farm.js';
import { columnsOf, fromColumns } from '../database/columns-of.js';
import { FarmEntity } from '../farms/farm.entity.js';

@Entity('people')
export class PersonEntity extends columnsOf(personFields) {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('people_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
}

export const toPerson = (row: PersonEntity): Person => ({
  ...fromColumns(personFields, row),
  id: row.id,
});
