import { Injectable } from '@nestjs/common';
import type { Facility } from '../../shared/farm/facility.js';
import type { Saved } from '../../shared/farm/saved.js';
import { checkCircuit, checkMaterials } from '../../shared/plan/check-facilities.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchEntity } from '../batches/batch.entity.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../common/owned-rows.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { checkFacility } from './facility.dto.js';
import { FacilityEntity, toFacility } from './facility.entity.js';

@Injectable()
export class FacilitiesService {
  private readonly rows: OwnedRows<FacilityEntity>;

  constructor(
    private readonly database: Database,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(database, FacilityEntity, {
      noun: 'facility',
      order: { kind: 'ASC', name: 'ASC', id: 'ASC' },
      view: toFacility,
    });
  }

  create(farmId: string, body: unknown): Promise<Saved<Facility>> {
    return this.database.write(farmId, async () =>
      toFacility(await this.rows.create(farmId, await this.valuesOf(farmId, body))),
    );
  }

  async findAll(farmId: string): Promise<Saved<Facility>[]> {
    return (await this.rows.findAll(farmId)).map(toFacility);
  }

  async findOne(farmId: string, id: string): Promise<Saved<Facility>> {
    return toFacility(await this.rows.findOne(farmId, id));
  }

  update(farmId: string, id: string, body: unknown, expected?: Expected): Promise<Saved<Facility>> {
    return this.database.write(farmId, async () => {
      const values = await this.valuesOf(farmId, body);
      const before = await this.rows.findOne(farmId, id);
      if (before.kind !== values.kind) throw otherKind(before.kind, values.kind);
      return toFacility(await this.rows.update(farmId, id, values, expected));
    });
  }

  /** Deletes a facility; batches and brooders that named it no longer do. */
  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected, async (manager) => {
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
  ): Promise<Pick<FacilityEntity, 'kind' | 'name' | 'details'>> {
    const facility = checkFacility(body);
    checkMaterials(facility as Facility, this.tables.tables);
    if ('circuitId' in facility && facility.circuitId !== undefined) {
      checkCircuit(facility as Facility, await this.findAll(farmId));
    }
    const { id: _id, version: _version, kind, name, ...details } = facility;
    return { kind, name, details };
  }
}

const otherKind = (is: string, given: string): FieldError =>
  new FieldError([
    {
      field: 'kind',
      code: 'conflict',
      given,
      fix: `This is a ${is}, and batches may live in it. Add a new facility for a ${given} and delete this one.`,
    },
  ]);
