import { Column, Entity, Index } from 'typeorm';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** One paddock. The name is a column for lists; the rest is as sent. */
@Entity('paddocks')
@Index('paddocks_farm', ['farmId'])
export class PaddockEntity extends RowOfFarm {
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Paddock, 'id' | 'name'> & {
    /** When the day it was last grazed was typed: moves told later count beside it. */
    lastGrazedTypedAt?: string;
  };
}

export const toPaddock = ({
  id,
  name,
  details: { lastGrazedTypedAt: _typedAt, ...details },
  version,
}: PaddockEntity): Saved<Paddock> => ({
  ...details,
  id,
  name,
  version,
});
