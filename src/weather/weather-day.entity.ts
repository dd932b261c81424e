import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { FarmEntity } from '../farms/farm.entity.js';

export type WeatherKind = 'fetched' | 'csv' | 'forecast';

@Entity('weather_days')
export class WeatherDayEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @PrimaryColumn({ type: 'varchar', length: 8 }) kind!: WeatherKind;
  @PrimaryColumn({ type: 'date' }) date!: string;
  @Column({ type: 'double precision' }) minC!: number;
  @Column({ type: 'double precision' }) maxC!: number;
  @Column({ type: 'double precision', nullable: true }) rainMm!: number | null;
}
