import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import type { Facility } from '../../shared/farm/facility.js';
import { checkMaterials } from '../../shared/plan/check-facilities.js';
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
    return toFacility(await this.rows.create(farmId, this.valuesOf(body)));
  }

  async findAll(farmId: string): Promise<Facility[]> {
    return (await this.rows.findAll(farmId)).map(toFacility);
  }

  async findOne(farmId: string, id: string): Promise<Facility> {
    return toFacility(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, body: unknown): Promise<Facility> {
    return toFacility(await this.rows.update(farmId, id, this.valuesOf(body)));
  }

  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id);
  }

  private valuesOf(body: unknown): Omit<FacilityEntity, 'id' | 'farmId' | 'farm'> {
    const facility = checkFacility(body);
    checkMaterials(facility as Facility, this.tables.tables);
    const { id: _id, kind, name, ...details } = facility;
    return { kind, name, details };
  }
}
