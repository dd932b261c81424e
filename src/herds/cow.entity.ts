import { Column, Entity, Index } from 'typeorm';
import type { Cow } from '../../shared/farm/cow.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One cow with a name. Herd and class are columns, as herds are checked by them; the rest is as sent. */
@Entity('cows')
@Index('cows_farm', ['farmId'])
export class CowEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 64 }) herdId!: string;
  @Column({ type: 'varchar', length: 64 }) classId!: string;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Cow, 'id' | 'name' | 'herdId' | 'classId'>;
}

export const toCow = ({ id, name, herdId, classId, details, version }: CowEntity): Saved<Cow> => ({
  ...details,
  id,
  name,
  herdId,
  classId,
  version,
});
