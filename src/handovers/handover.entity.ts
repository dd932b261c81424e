import { Column, Entity, Index } from 'typeorm';
import type { Handover } from '../../shared/farm/handover.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

/** Days that are handed to a sitter. The first day is a column for lists; the rest is as sent. */
@Entity('handovers')
@Index('handovers_farm', ['farmId'])
export class HandoverEntity extends RowOfFarm {
  @Column({ type: 'date' }) firstDay!: string;
  @Column({ type: 'simple-json' }) details!: Omit<Handover, 'id' | 'from'>;
}

export const toHandover = ({
  id,
  firstDay,
  details,
  version,
}: HandoverEntity): Saved<Handover> => ({
  ...details,
  id,
  from: firstDay,
  version,
});
