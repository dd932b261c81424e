import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import type { Facility } from '../../shared/farm/facility.js';
import { checkCircuit, checkMaterials } from '../../shared/plan/check-facilities.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { OwnedRows } from '../common/owned-rows.js';
import { TablesService } from '../reference/tables.service.js';
import { checkFacility } from './facility.dto.js';
import { FacilityEntity, toFacility } from './facility.entity.js';

@Injectable()
export class FacilitiesService {
  private readonly rows: OwnedRows<FacilityEntity>;

  constructor(
    @InjectDataSource() source: DataSource,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(source, FacilityEntity, 'facility', { kind: 'ASC', name: 'ASC' });
  }

  async create(farmId: string, body: unknown): Promise<Facility> {
    return toFacility(await this.rows.create(farmId, await this.valuesOf(farmId, body)));
  }

  async findAll(farmId: string): Promise<Facility[]> {
    return (await this.rows.findAll(farmId)).map(toFacility);
  }

  async findOne(farmId: string, id: string): Promise<Facility> {
    return toFacility(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, body: unknown): Promise<Facility> {
    const values = await this.valuesOf(farmId, body);
    const before = await this.rows.findOne(farmId, id);
    if (before.kind !== values.kind) {
      throw new FieldError([
        {
          field: 'kind',
          code: 'conflict',
          given: values.kind,
          fix: `This is a ${before.kind}, and batches may live in it. Add a new facility for a ${values.kind} and delete this one.`,
        },
      ]);
    }
    return toFacility(await this.rows.update(farmId, id, values));
  }

  /** Deletes a facility; batches and brooders that named it no longer do. */
  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id, async (manager) => {
      for (const target of [BatchEntity, FacilityEntity]) {
        const rows = await manager.findBy(target, { farmId });
        const changed = rows.filter((row) => Object.values(row.details).includes(id));
        for (const row of changed) {
          row.details = Object.fromEntries(
            Object.entries(row.details).filter(([, value]) => value !== id),
          ) as never;
        }
        if (0 < changed.length) await manager.save(changed);
      }
    });
  }

  private async valuesOf(
    farmId: string,
    body: unknown,
  ): Promise<Omit<FacilityEntity, 'id' | 'farmId' | 'farm'>> {
    const facility = checkFacility(body);
    checkMaterials(facility as Facility, this.tables.tables);
    if ('circuitId' in facility && facility.circuitId !== undefined) {
      checkCircuit(facility as Facility, await this.findAll(farmId));
    }
    const { id: _id, kind, name, ...details } = facility;
    return { kind, name, details };
  }
}
