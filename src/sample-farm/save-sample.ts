import type { DeepPartial, EntityManager } from 'typeorm';
import { addDays, type PlainDate } from '../../shared/calendar/plain-date.js';
import { personFields } from '../../shared/farm/farm.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { toColumns } from '../common/columns-of.js';
import { FacilityEntity } from '../facilities/facility.entity.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { HandoverEntity } from '../handovers/handover.entity.js';
import { CowEntity } from '../herds/cow.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { ProductEntity } from '../products/product.entity.js';
import type { Tables } from '../../shared/tables/tables.js';
import { SupplierEntity } from '../suppliers/supplier.entity.js';
import { keepFacts } from '../told/keep-facts.js';
import type { SampleOnDay } from './sample-on-day.js';
import type { SampleSeed } from './sample-seed.js';

/** Saves the rows of a sample farm and what was told of it, all or none. */
export async function saveSample(
  manager: EntityManager,
  {
    farmId,
    today,
    seed,
    day,
    tables,
  }: {
    readonly farmId: string;
    readonly today: PlainDate;
    readonly seed: SampleSeed;
    readonly day: SampleOnDay;
    readonly tables: Tables;
  },
): Promise<void> {
  await manager.save(
    manager.create(FarmEntity, {
      ...seed.farm,
      ...{ id: farmId, isSample: true, weatherFetch: false, pasture: {} },
    } as DeepPartial<FarmEntity>),
  );
  await manager.save(
    FacilityEntity,
    seed.facilities.map(({ id, kind, name, ...details }) => ({
      ...{ id, farmId, kind, name, details },
    })) as DeepPartial<FacilityEntity>[],
  );
  await manager.save(
    SupplierEntity,
    seed.suppliers.map(({ id, name, ...details }) => ({
      ...{ id, farmId, name, details },
    })) as DeepPartial<SupplierEntity>[],
  );
  await manager.save(
    ProductEntity,
    seed.products.map(({ id, kind, name, storeDaysAgo, ...details }) => ({
      ...{ id, farmId, kind, name },
      details:
        storeDaysAgo === undefined
          ? details
          : { ...details, storeOn: addDays(today, -storeDaysAgo) },
    })) as DeepPartial<ProductEntity>[],
  );
  await manager.save(
    PersonEntity,
    day.people.map((person) => ({
      ...toColumns(personFields, person),
      ...{ id: person.id, farmId },
    })) as DeepPartial<PersonEntity>[],
  );
  await saveAnimals(manager, { farmId, seed, day });
  await saveWork(manager, farmId, day);
  const { batches, herds, facts } = day;
  const idsOf = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
  await keepFacts(manager, farmId, facts, {
    farm: {
      today,
      ...{ paddockIds: idsOf(seed.paddocks), herdIds: idsOf(herds), batchIds: idsOf(batches) },
    },
    tables,
    fieldOf: (k, field) => `told.${k}.${field}`,
  });
}

async function saveAnimals(
  manager: EntityManager,
  { farmId, seed, day }: { farmId: string; seed: SampleSeed; day: SampleOnDay },
): Promise<void> {
  await manager.save(
    BatchEntity,
    day.batches.map(({ id, name, arrivalDate, ...details }) => ({
      ...{ id, farmId, name, arrivalDate, details },
    })) as DeepPartial<BatchEntity>[],
  );
  await manager.save(
    PaddockEntity,
    seed.paddocks.map(({ id, name, ...details }) => ({ id, farmId, name, details })),
  );
  await manager.save(
    HerdEntity,
    day.herds.map(({ id, name, ...details }) => ({ id, farmId, name, details })),
  );
  await manager.save(
    CowEntity,
    day.cows.map(({ id, name, herdId, classId, ...details }) => ({
      ...{ id, farmId, name, herdId, classId, details },
    })),
  );
}

async function saveWork(
  manager: EntityManager,
  farmId: string,
  { jobs, handover }: SampleOnDay,
): Promise<void> {
  await manager.save(
    JobEntity,
    jobs.map(({ id, name, ...details }) => ({ id, farmId, name, details })),
  );
  const { id, from, ...details } = handover;
  await manager.save(HandoverEntity, { id, farmId, firstDay: from, details });
}
