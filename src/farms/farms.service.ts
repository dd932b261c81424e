import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { randomUUID } from 'node:crypto';
import { DataSource, In, type EntityManager } from 'typeorm';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import { farmFields, type Farm, type Person } from '../../shared/farm/farm.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { checkId, farmNotFound, raiseRevision } from '../common/owned-rows.js';
import { TablesService } from '../reference/tables.service.js';
import { checkSoil } from './check-soil.js';
import { FacilityEntity } from '../facilities/facility.entity.js';
import { GrassReadingEntity } from '../grass-readings/grass-reading.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { readSeed } from '../reference/load-tables.js';
import { WeatherDayEntity } from '../weather/weather-day.entity.js';
import { fromColumns, toColumns } from '../database/columns-of.js';
import { farmViewFields, type FarmDto, type FarmView } from './farm.dto.js';
import { FarmEntity } from './farm.entity.js';

/** The sample as it lies in seeds/. Dates are month-days, so that it is never out of season. */
interface SampleFarm {
  readonly farm: Farm;
  readonly facilities: readonly Facility[];
  readonly people: readonly (Omit<Person, 'away'> & {
    readonly away?: Person['away'];
    readonly awayMonthDays?: readonly { readonly from: string; readonly to: string }[];
  })[];
  readonly batches: readonly (Omit<Batch, 'arrivalDate'> & { readonly arrivalMonthDay: string })[];
  readonly paddocks: readonly Paddock[];
  readonly readings: readonly { readonly paddockId: string; readonly heightCm: number }[];
  readonly herds: readonly (Omit<Herd, 'groups'> & {
    readonly groups: readonly (CattleGroup & { readonly calvesMonthDay?: string })[];
  })[];
}

/** A sample batch arrives no sooner than this many days from today. */
const SAMPLE_LEAD_DAYS = 45;

@Injectable()
export class FarmsService {
  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly tables: TablesService,
  ) {}

  async create(dto: FarmDto): Promise<FarmView> {
    checkSoil(dto.gardenSoilId, this.tables.tables);
    const row = this.rows.create({ ...dto, pasture: {}, id: randomUUID() });
    return toFarmView(await this.rows.save(row));
  }

  /** Loads the invented sample farm with its buildings, people and batches. */
  async createSample(): Promise<FarmView> {
    const sample = JSON.parse(readSeed('sample-farm.json')) as SampleFarm;
    const farmId = randomUUID();
    // The sample's own ids are made unique, so that it can be loaded more than once.
    const own = (id: string | undefined): string | undefined =>
      id === undefined ? undefined : `${id}-${farmId.slice(0, 8)}`;
    const today = plainDateAt(Date.now(), sample.farm.timeZone);
    return this.source.transaction(async (manager) => {
      const farm = await manager.save(FarmEntity, {
        ...sample.farm,
        id: farmId,
        isSample: true,
        weatherFetch: false,
        pasture: {},
        revision: 1,
      } as FarmEntity);
      await manager.save(
        FacilityEntity,
        sample.facilities.map(({ id, kind, name, ...details }) => ({
          id: own(id)!,
          farmId,
          kind,
          name,
          details:
            'circuitId' in details ? { ...details, circuitId: own(details.circuitId) } : details,
        })) as FacilityEntity[],
      );
      await manager.save(
        PersonEntity,
        sample.people.map(({ id, awayMonthDays = [], away = [], ...person }) => ({
          ...person,
          id: own(id)!,
          farmId,
          away: [
            ...away,
            ...awayMonthDays.map(({ from, to }) => {
              const first = nextMonthDay(from, today);
              return { from: first, to: nextMonthDay(to, first) };
            }),
          ],
        })) as PersonEntity[],
      );
      await manager.save(
        BatchEntity,
        sample.batches.map(({ id, name, arrivalMonthDay, ...details }) => ({
          id: own(id)!,
          farmId,
          name,
          arrivalDate: nextMonthDay(arrivalMonthDay, addDays(today, SAMPLE_LEAD_DAYS)),
          details: {
            ...details,
            brooderId: own(details.brooderId),
            penId: own(details.penId),
            coopId: own(details.coopId),
            freezerId: own(details.freezerId),
            feedStoreId: own(details.feedStoreId),
          },
        })) as BatchEntity[],
      );
      await saveSampleGrass(manager, sample, { farmId, today, own });
      return toFarmView(farm);
    });
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
    checkSoil(dto.gardenSoilId, this.tables.tables);
    return this.source.transaction(async (manager) => {
      await raiseRevision(manager, id);
      const before = await manager.findOneByOrFail(FarmEntity, { id });
      await manager.update(FarmEntity, { id }, toColumns(farmFields, dto));
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

export const toFarmView = (row: FarmEntity): FarmView => fromColumns(farmViewFields, row);

function nextMonthDay(monthDay: string, from: string): string {
  const thisYear = `${from.slice(0, 4)}-${monthDay}`;
  return from <= thisYear ? thisYear : `${Number(from.slice(0, 4)) + 1}-${monthDay}`;
}

async function saveSampleGrass(
  manager: EntityManager,
  sample: SampleFarm,
  of: { farmId: string; today: string; own: (id: string | undefined) => string | undefined },
): Promise<void> {
  const { farmId, today, own } = of;
  await manager.save(
    PaddockEntity,
    sample.paddocks.map(({ id, name, ...details }) => ({ id: own(id)!, farmId, name, details })),
  );
  await manager.save(
    GrassReadingEntity,
    sample.readings.map(({ paddockId, heightCm }) => ({
      id: randomUUID(),
      farmId,
      paddockId: own(paddockId)!,
      // The household walked its field a few days ago.
      date: addDays(today, -4),
      heightCm,
    })),
  );
  await manager.save(
    HerdEntity,
    sample.herds.map(({ id, name, groups, followedByBatchId, ...details }) => ({
      id: own(id)!,
      farmId,
      name,
      details: {
        ...details,
        ...(followedByBatchId === undefined ? {} : { followedByBatchId: own(followedByBatchId)! }),
        groups: groups.map(({ calvesMonthDay, ...group }) =>
          calvesMonthDay === undefined
            ? group
            : { ...group, calvesOn: nextMonthDay(calvesMonthDay, today) },
        ),
      },
    })),
  );
}
