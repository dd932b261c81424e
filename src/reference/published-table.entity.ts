import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A published table as loaded from seeds/, kept beside the plans that were made from it. */
@Entity('published_tables')
export class PublishedTableEntity {
  @PrimaryColumn({ type: 'varchar', length: 40 }) name!: string;
  @Column({ type: 'varchar', length: 64 }) sha256!: string;
  @Column({ type: 'text' }) content!: string;
}
