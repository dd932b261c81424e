import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { In } from 'typeorm';
import { estimatedThere } from '../../shared/farm/estimated-climate.js';
import { farmFields } from '../../shared/farm/farm.js';
import { ClimateEstimateService } from '../climate-estimate/climate-estimate.service.js';
import { refuseOutdated, type Expected } from '../common/expected-version.js';
import { checkId, farmNotFound } from '../database/ids.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import { checkCountry } from '../holidays/holidays.js';
import { checkSoil } from './check-soil.js';
import { WeatherDayEntity } from '../weather/weather-day.entity.js';
import { fromColumns, toColumns } from '../common/columns-of.js';
import { farmViewFields, type SentFarmDto, type FarmView } from './farm.dto.js';
import { FarmEntity } from './farm.entity.js';

export type FarmState = Pick<FarmView, 'id' | 'revision' | 'timeZone'>;

@Injectable()
export class FarmsService {
  constructor(
    private readonly database: Database,
    private readonly tables: TablesService,
    private readonly estimates: ClimateEstimateService,
  ) {}

  async create(dto: SentFarmDto): Promise<FarmView> {
    checkSoil(dto.gardenSoilId, this.tables.tables);
    checkCountry(dto);
    return this.database.writeNew(async (manager) =>
      toFarmView(
        await manager.save(
          manager.create(FarmEntity, {
            ...toColumns(farmFields, dto),
            pasture: {},
            id: randomUUID(),
          }),
        ),
      ),
    );
  }

  /** Farms by name, and how many there are in all. */
  async findAll(skip: number, take: number): Promise<{ farms: FarmView[]; total: number }> {
    const order = { name: 'ASC', id: 'ASC' } as const;
    const [rows, total] = await this.rows.findAndCount({ order, skip, take });
    return { farms: rows.map(toFarmView), total };
  }

  async findOne(id: string): Promise<FarmView> {
    return toFarmView(await this.findRow(id));
  }

  /** What says whether a farm has changed, without all that is kept of it. */
  async findState(id: string): Promise<FarmState> {
    checkId(id);
    const select = { id: true, revision: true, timeZone: true } as const;
    const row = await this.rows.findOne({ where: { id }, select });
    if (!row) throw farmNotFound(id);
    return row;
  }

  async findRow(id: string): Promise<FarmEntity> {
    checkId(id);
    const row = await this.rows.findOneBy({ id });
    if (!row) throw farmNotFound(id);
    return row;
  }

  async update(id: string, dto: SentFarmDto, expected: Expected = {}): Promise<FarmView> {
    checkSoil(dto.gardenSoilId, this.tables.tables);
    checkCountry(dto);
    return this.database.write(id, async (manager) => {
      const before = await manager.findOneByOrFail(FarmEntity, { id });
      await refuseOutdated(before.version, expected, () => toFarmView(before));
      const hasMoved =
        before.latitudeDeg !== dto.latitudeDeg || before.longitudeDeg !== dto.longitudeDeg;
      const isElsewhere = hasMoved || before.elevationM !== dto.elevationM;
      const estimate = isElsewhere ? this.estimates.find(dto) : undefined;
      const farm = estimate ? estimatedThere(toFarmView(before), dto, estimate) : dto;
      await manager.update(
        FarmEntity,
        { id },
        { ...toColumns(farmFields, farm), version: before.version + 1 },
      );
      // Weather that was fetched belongs to the old place.
      if (hasMoved)
        await manager.delete(WeatherDayEntity, { farmId: id, kind: In(['fetched', 'forecast']) });
      return toFarmView(await manager.findOneByOrFail(FarmEntity, { id }));
    });
  }

  async remove(id: string, expected: Expected = {}): Promise<void> {
    await this.database.write(id, async (manager) => {
      const before = await manager.findOneByOrFail(FarmEntity, { id });
      await refuseOutdated(before.version, expected, () => toFarmView(before));
      await manager.delete(FarmEntity, { id });
    });
  }

  private get rows() {
    return this.database.manager.getRepository(FarmEntity);
  }
}

export const toFarmView = (row: FarmEntity): FarmView => fromColumns(farmViewFields, row);
