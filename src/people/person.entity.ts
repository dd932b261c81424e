import {
  Column,
  Entity,
  Index,
  JoinColumn,
  ManyToOne,
  PrimaryColumn,
  VersionColumn,
} from 'typeorm';
import type { Away, Person, StartingHours } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FarmEntity } from '../farms/farm.entity.js';

@Entity('people')
export class PersonEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Index('people_farm') @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) away!: Away[];
  @Column({ type: 'simple-json', nullable: true }) hoursByWeekday!: number[] | null;
  @Column({ type: 'simple-json', nullable: true }) startH!: StartingHours | null;
  @VersionColumn({ default: 1 }) version!: number;
}

export const toPerson = ({
  id,
  name,
  away,
  hoursByWeekday,
  startH,
  version,
}: PersonEntity): Saved<Person> => ({
  id,
  name,
  away,
  version,
  ...(hoursByWeekday === null ? {} : { hoursByWeekday }),
  ...(startH === null ? {} : { startH }),
});
