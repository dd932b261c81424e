import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import type { ToldFact, ToldKind } from '../../shared/farm/told-fact.js';
import { FarmEntity } from '../farms/farm.entity.js';

/** What happened on a farm, as it was told: every kind of fact in one table. */
@Entity('told_facts')
@Index('told_facts_kind', ['farmId', 'kind', 'on'])
@Index('told_facts_told', ['farmId', 'toldAt'])
@Index('told_facts_on', ['farmId', 'on', 'toldAt', 'id'])
@Index('told_facts_about', ['farmId', 'about', 'kind'])
@Index('told_facts_replaces', ['farmId', 'replaces'])
@Index('told_facts_key', ['farmId', 'key'], { unique: true })
export class ToldFactEntity {
  @PrimaryColumn({ type: 'varchar', length: 64 }) id!: string;
  @Column({ type: 'varchar', length: 36 }) farmId!: string;
  @ManyToOne(() => FarmEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'farmId' })
  farm?: FarmEntity;
  @Column({ type: 'varchar', length: 24 }) kind!: ToldKind;
  @Column({ type: 'varchar', length: 200 }) about!: string;
  /** Text, not a date, so that thousands of rows are read raw and alike on both databases. */
  @Column({ type: 'varchar', length: 10 }) on!: string;
  @Column({ type: 'simple-json' }) details!: Record<string, unknown>;
  @Column({ type: 'varchar', length: 80, nullable: true }) saidBy!: string | null;
  @Column({ type: 'varchar', length: 24 }) toldAt!: string;
  @Column({ type: 'varchar', length: 80 }) key!: string;
  @Column({ type: 'varchar', length: 64, nullable: true }) replaces!: string | null;
  @Column({ type: 'varchar', length: 24, nullable: true }) takenBackAt!: string | null;
}

type Row = Omit<ToldFactEntity, 'farmId' | 'farm'>;

export const toFact = ({ saidBy, replaces, takenBackAt, ...row }: Row): ToldFact =>
  ({
    id: row.id,
    kind: row.kind,
    about: row.about,
    on: row.on,
    details: row.details,
    toldAt: row.toldAt,
    key: row.key,
    ...(saidBy === null ? {} : { saidBy }),
    ...(replaces === null ? {} : { replaces }),
    ...(takenBackAt === null ? {} : { takenBackAt }),
  }) as ToldFact;
