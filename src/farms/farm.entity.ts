import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import type { UnitSystem } from '../../shared/units/unit.js';

@Entity('farms')
export class FarmEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 }) id!: string;
  @Column({ type: 'varchar', length: 80 }) name!: string;
  @Column({ type: 'double precision' }) latitudeDeg!: number;
  @Column({ type: 'double precision' }) longitudeDeg!: number;
  @Column({ type: 'double precision' }) elevationM!: number;
  @Column({ type: 'varchar', length: 64 }) timeZone!: string;
  @Column({ type: 'varchar', length: 8 }) units!: UnitSystem;
  @Column({ type: 'varchar', length: 3 }) currency!: string;
  @Column({ type: 'varchar', length: 20 }) electricityPricePerKWh!: string;
  @Column({ type: 'varchar', length: 20 }) gasPricePerL!: string;
  @Column({ type: 'simple-json' }) monthlyMinC!: number[];
  @Column({ type: 'simple-json' }) monthlyMaxC!: number[];
  @Column({ type: 'simple-json', nullable: true }) monthlyRainMm?: number[] | null;
  /** Choices of the pasture plan. */
  @Column({ type: 'simple-json', default: '{}' }) pasture!: PastureChoices;
  @Column({ type: 'varchar', length: 5 }) lastFrost!: string;
  @Column({ type: 'varchar', length: 5 }) firstFrost!: string;
  @Column({ type: 'varchar', length: 64, nullable: true }) gardenSoilId?: string | null;
  @Column({ type: 'simple-json' }) noDeliveryDates!: string[];
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
