import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { randomUUID } from 'node:crypto';
import { DataSource, In } from 'typeorm';
import { checkId, farmNotFound, raiseRevision } from '../common/owned-rows.js';
import { TablesService } from '../reference/tables.service.js';
import { checkClimate } from './check-climate.js';
import { checkSoil } from './check-soil.js';
import { WeatherDayEntity } from '../weather/weather-day.entity.js';
import type { FarmDto, FarmView } from './farm.dto.js';
import { FarmEntity } from './farm.entity.js';

@Injectable()
export class FarmsService {
  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly tables: TablesService,
  ) {}

  async create(dto: FarmDto): Promise<FarmView> {
    checkClimate(dto.monthlyMinC, dto.monthlyMaxC);
    checkSoil(dto.gardenSoilId, this.tables.tables);
    const row = this.rows.create({ ...dto, pasture: {}, id: randomUUID() });
    return toFarmView(await this.rows.save(row));
  }

  async findAll(): Promise<FarmView[]> {
    const rows = await this.rows.find({ order: { name: 'ASC', id: 'ASC' }, take: 500 });
    return rows.map(toFarmView);
  }

  async findOne(id: string): Promise<FarmView> {
    return toFarmView(await this.findRow(id));
  }

  async findRow(id: string): Promise<FarmEntity> {
    checkId(id);
    const row = await this.rows.findOneBy({ id });
    if (!row) throw farmNotFound(id);
    return row;
  }

  async update(id: string, dto: FarmDto): Promise<FarmView> {
    checkClimate(dto.monthlyMinC, dto.monthlyMaxC);
    checkSoil(dto.gardenSoilId, this.tables.tables);
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, id);
      const before = await manager.findOneByOrFail(FarmEntity, { id });
      await manager.update(
        FarmEntity,
        { id },
        {
          ...dto,
          monthlyRainMm: dto.monthlyRainMm ?? null,
          gardenSoilId: dto.gardenSoilId ?? null,
        },
      );
      const hasMoved =
        before.latitudeDeg !== dto.latitudeDeg || before.longitudeDeg !== dto.longitudeDeg;
      // Weather that was fetched belongs to the old place.
      if (hasMoved)
        await manager.delete(WeatherDayEntity, { farmId: id, kind: In(['fetched', 'forecast']) });
      return toFarmView(await manager.findOneByOrFail(FarmEntity, { id }));
    });
  }

  async remove(id: string): Promise<void> {
    checkId(id);
    const { affected } = await this.rows.delete({ id });
    if (affected === 0) throw farmNotFound(id);
  }

  private get rows() {
    return this.source.getRepository(FarmEntity);
  }
}

export function toFarmView(row: FarmEntity): FarmView {
  const { weatherFetch: _fetch, pasture: _pasture, monthlyRainMm, gardenSoilId, ...view } = row;
  return {
    ...view,
    ...(monthlyRainMm ? { monthlyRainMm } : {}),
    ...(gardenSoilId ? { gardenSoilId } : {}),
  };
}
