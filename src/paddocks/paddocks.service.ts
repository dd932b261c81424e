import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { randomUUID } from 'node:crypto';
import { DataSource } from 'typeorm';
import type { Herd } from '../../shared/farm/herd.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import { paddockProblems } from '../../shared/plan/pasture/check-pasture.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { OwnedRows, raiseRevision } from '../common/owned-rows.js';
import { GrassReadingEntity } from '../grass-readings/grass-reading.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { TablesService } from '../reference/tables.service.js';
import { checkedCorners, outlineAreaM2, outlinesOfGeoJson } from './outline.js';
import type { PaddockDto } from './paddock.dto.js';
import { PaddockEntity, toPaddock } from './paddock.entity.js';

type Details = PaddockEntity['details'];

@Injectable()
export class PaddocksService {
  private readonly rows: OwnedRows<PaddockEntity>;

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(source, PaddockEntity, 'paddock', { name: 'ASC', id: 'ASC' });
  }

  async create(farmId: string, dto: PaddockDto): Promise<Paddock> {
    return toPaddock(await this.rows.create(farmId, this.valuesOf(dto)));
  }

  async findAll(farmId: string): Promise<Paddock[]> {
    return (await this.rows.findAll(farmId)).map(toPaddock);
  }

  async findOne(farmId: string, id: string): Promise<Paddock> {
    return toPaddock(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, dto: PaddockDto): Promise<Paddock> {
    return toPaddock(await this.rows.update(farmId, id, this.valuesOf(dto)));
  }

  /** Deletes a paddock with its readings; herds that stood in it stand nowhere. */
  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id, (manager) => forget(manager, farmId, [id]));
  }

  /** Cuts a paddock into equal strips. The strips carry its readings on; the whole is gone. */
  async split(farmId: string, id: string, parts: number): Promise<Paddock[]> {
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const whole = await this.rows.findOne(farmId, id);
      const { outline: _outline, ...details } = whole.details;
      const strips = Array.from({ length: parts }, (_, k) => ({
        id: randomUUID(),
        farmId,
        name: `${whole.name.slice(0, 76)} ${k + 1}`,
        details: { ...details, areaM2: details.areaM2 / parts },
      }));
      this.check({ ...strips[0]!.details, id, name: whole.name });
      const readings = await manager.findBy(GrassReadingEntity, { farmId, paddockId: id });
      await manager.delete(PaddockEntity, { id, farmId });
      await forget(manager, farmId, [id]);
      const saved = await manager.save(PaddockEntity, strips);
      await manager.insert(
        GrassReadingEntity,
        strips.flatMap((strip) =>
          readings.map(({ date, heightCm }) => ({
            id: randomUUID(),
            farmId,
            paddockId: strip.id,
            date,
            heightCm,
          })),
        ),
      );
      return saved.map(toPaddock);
    });
  }

  /** Makes one paddock of several: areas add up, the rest is as in the first. */
  async join(farmId: string, given: readonly unknown[], name: string): Promise<Paddock> {
    const ids = [...new Set(given.map(String))];
    if (ids.length < 2) {
      throw new FieldError([
        {
          field: 'ids',
          code: 'out-of-bounds',
          given: ids.length,
          min: 2,
          fix: 'Name at least two different paddocks to join.',
        },
      ]);
    }
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows: PaddockEntity[] = [];
      for (const id of ids) rows.push(await this.rows.findOne(farmId, id));
      const { outline: _outline, ...details } = rows[0]!.details;
      const areaM2 = rows.reduce((sum, row) => sum + row.details.areaM2, 0);
      this.check({ ...details, areaM2, id: rows[0]!.id, name });
      for (const row of rows) await manager.delete(PaddockEntity, { id: row.id, farmId });
      await forget(
        manager,
        farmId,
        rows.map((row) => row.id),
      );
      return toPaddock(
        await manager.save(PaddockEntity, {
          id: randomUUID(),
          farmId,
          name,
          details: { ...details, areaM2 },
        }),
      );
    });
  }

  /** Adds a paddock for every polygon of a GeoJSON document; all of them or none. */
  async importGeoJson(farmId: string, document: unknown): Promise<Paddock[]> {
    const outlines = outlinesOfGeoJson(document);
    const { forages, soils } = this.tables.tables;
    const rows = outlines.map(({ name, outline, areaM2 }): PaddockEntity => {
      const details: Details = {
        areaM2,
        forageId: forages.find((f) => f.id === 'mixed')?.id ?? forages[0]!.id,
        stand: 'good',
        productivity: 'medium',
        soilId: soils.find((s) => s.id === 'loam')?.id ?? soils[0]!.id,
        hasWater: true,
        hasShade: false,
        closed: [],
        outline,
      };
      this.check({ ...details, id: 'new', name });
      return { id: randomUUID(), farmId, name, details };
    });
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      return (await manager.save(PaddockEntity, rows)).map(toPaddock);
    });
  }

  private valuesOf({ id: _id, name, areaM2, outline, ...rest }: PaddockDto): {
    name: string;
    details: Details;
  } {
    if (areaM2 === undefined && outline === undefined) {
      throw new FieldError([
        {
          field: 'areaM2',
          code: 'missing',
          given: undefined,
          fix: 'Give the area, or the outline it is worked out from.',
        },
      ]);
    }
    const details: Details = {
      ...rest,
      areaM2: areaM2 ?? outlineAreaM2(outline),
      ...(outline === undefined ? {} : { outline: checkedCorners(outline) }),
    };
    this.check({ ...details, id: 'new', name });
    return { name, details };
  }

  private check(paddock: Paddock): void {
    const problems = paddockProblems(paddock, this.tables.tables);
    if (0 < problems.length) throw new FieldError(problems);
  }
}

/** Readings of paddocks that are gone go too, and herds no longer stand in them. */
async function forget(
  manager: DataSource['manager'],
  farmId: string,
  ids: readonly string[],
): Promise<void> {
  for (const paddockId of ids) await manager.delete(GrassReadingEntity, { farmId, paddockId });
  const herds = await manager.findBy(HerdEntity, { farmId });
  const changed = herds.filter(
    ({ details }) => details.inPaddockId !== undefined && ids.includes(details.inPaddockId),
  );
  for (const herd of changed) {
    const {
      inPaddockId: _in,
      inSince: _since,
      ...details
    } = herd.details as Omit<Herd, 'id' | 'name'>;
    herd.details = details;
  }
  if (0 < changed.length) await manager.save(changed);
}
