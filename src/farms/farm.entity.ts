import { Column, Entity, PrimaryColumn } from 'typeorm';
import { farmFields } from '../../shared/farm/farm.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import { columnsOf } from '../common/columns-of.js';

@Entity('farms')
export class FarmEntity extends columnsOf(farmFields) {
  @PrimaryColumn({ type: 'varchar', length: 36 }) id!: string;
  /** Choices of the pasture plan. */
  @Column({ type: 'simple-json', default: '{}' }) pasture!: PastureChoices;
  /** Goes up only with the choices of the pasture plan. */
  @Column({ type: 'integer', default: 1 }) pastureVersion!: number;
  @Column({ type: 'boolean', default: false }) isSample!: boolean;
  /** Only with this may weather be fetched from outside. */
  @Column({ type: 'boolean', default: false }) weatherFetch!: boolean;
  /** Part of the address of the farm's calendar; a secret, never shown with the farm. */
  @Column({ type: 'varchar', length: 43, nullable: true }) calendarKey?: string | null;
  /** Goes up with every change to the farm or anything in it; cached plans are keyed by it. */
  @Column({ type: 'integer', default: 1 }) revision!: number;
  /** Goes up only with what is typed of the farm itself. */
  @Column({ type: 'integer', default: 1 }) version!: number;
}
