import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { Away, Person, StartingHours } from '../../shared/farm/farm.js';
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
}

export const toPerson = ({ id, name, away, hoursByWeekday, startH }: PersonEntity): Person => ({
  id,
  name,
  away,
  ...(hoursByWeekday === null ? {} : { hoursByWeekday }),
  ...(startH === null ? {} : { startH }),
});
