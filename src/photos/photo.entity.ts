import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { FarmEntity } from '../farms/farm.entity.js';

/** A photo of a farm. It never changes; what it is of says the note that names it. */
@Entity('photos')
@Index('photos_farm', ['farmId'])
export class PhotoEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  /** An instant in UTC. */
  @Column({ type: 'varchar', length: 24 }) sentAt!: string;
  /** A note names it. What no note names goes after a while. */
  @Column({ type: 'boolean' }) isTold!: boolean;
  @Column({ type: 'integer' }) bytes!: number;
  /** Base64, so that archives of both databases hold it like any other text. */
  @Column({ type: 'text' }) jpeg!: string;
}
