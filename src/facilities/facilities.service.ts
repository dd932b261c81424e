import { Injectable } from '@nestjs/common';
import type { Facility } from '../../shared/farm/facility.js';
import type { Saved } from '../../shared/farm/saved.js';
import { checkCircuit, checkMaterials } from '../../shared/plan/check-facilities.js';
import { BatchEntity } from '../batches/batch.entity.js';
import type { Expected } from '../common/expected-version.js';
import { refuseOtherKind, RowsOfFarm } from '../rows/rows-of-farm.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { checkFacility } from './facility.dto.js';
import { FacilityEntity, toFacility } from './facility.entity.js';

@Injectable()
export class FacilitiesService extends RowsOfFarm<FacilityEntity, Saved<Facility>, unknown> {
  constructor(
    database: Database,
    private readonly tables: TablesService,
  ) {
    super(database, FacilityEntity, {
      noun: 'facility',
      order: ['kind', 'name', 'id'],
      view: toFacility,
      tells: {
        of: ({ kind }) => kind,
        fields: (row) => ({ ...toFacility(row) }),
        name: (row) => row.name,
      },
    });
  }

  /** Deletes a facility; batches and brooders that named it no longer do. */
  override remove(farmId: string, id: string, expected?: Expected): Promise<void> {
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

  protected async valuesOf(farmId: string, body: unknown, before?: FacilityEntity) {
    const facility = checkFacility(body);
    checkMaterials(facility as Facility, this.tables.tables);
    if ('circuitId' in facility && facility.circuitId !== undefined) {
      checkCircuit(facility as Facility, await this.findAll(farmId));
    }
    const { id: _id, version: _version, kind, name, ...details } = facility;
    refuseOtherKind(
      before?.kind,
      kind,
      `This is a ${before?.kind}, and batches may live in it. Add a new facility for a ${kind} and delete this one.`,
    );
    return { kind, name, details };
  }
}
