import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { DeepPartial, EntityManager } from 'typeorm';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { Farm, Person } from '../../shared/farm/farm.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { CattleGroup, Herd } from '../../shared/farm/herd.js';
import type { Product } from '../../shared/farm/product.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { Database } from '../database/database.js';
import { FacilityEntity } from '../facilities/facility.entity.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { toFarmView } from '../farms/farms.service.js';
import { ToldFactEntity } from '../told/told-fact.entity.js';
import { CowEntity } from '../herds/cow.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { ProductEntity } from '../products/product.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { readSeed } from '../reference/load-tables.js';

/** The sample as it lies in seeds/. Dates are month-days, so that it is never out of season. */
interface SampleFarm {
  readonly farm: Farm;
  readonly facilities: readonly Facility[];
  readonly products: readonly Product[];
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
  readonly cows: readonly Cow[];
}

/** A sample batch arrives no sooner than this many days from today. */
const SAMPLE_LEAD_DAYS = 45;

@Injectable()
export class SampleFarmService {
  constructor(private readonly database: Database) {}

  /** Loads the invented sample farm with its buildings, people and batches. */
  async create(): Promise<FarmView> {
    const sample = JSON.parse(readSeed('sample-farm.json')) as SampleFarm;
    const farmId = randomUUID();
    // The sample's own ids are made unique, so that it can be loaded more than once.
    const own = (id: string | undefined): string | undefined =>
      id === undefined ? undefined : `${id}-${farmId.slice(0, 8)}`;
    const today = plainDateAt(Date.now(), sample.farm.timeZone);
    return this.database.writeNew(async (manager) => {
      const farm = await manager.save(FarmEntity, {
        ...sample.farm,
        id: farmId,
        isSample: true,
        weatherFetch: false,
        pasture: {},
        revision: 1,
        version: 1,
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
        })) as DeepPartial<FacilityEntity>[],
      );
      await manager.save(
        ProductEntity,
        sample.products.map(({ id, kind, name, ...details }) => ({
          ...{ id: own(id)!, farmId, kind, name, details },
        })) as DeepPartial<ProductEntity>[],
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
        })) as DeepPartial<PersonEntity>[],
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
        })) as DeepPartial<BatchEntity>[],
      );
      await saveSampleGrass(manager, sample, { farmId, today, own });
      return toFarmView(farm);
    });
  }
}

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
  // The household walked its field a few days ago.
  const walkedOn = addDays(today, -4);
  await manager.save(
    ToldFactEntity,
    sample.readings.map(({ paddockId, heightCm }) => {
      const id = randomUUID();
      return {
        id,
        farmId,
        kind: 'grass-reading' as const,
        about: own(paddockId)!,
        on: walkedOn,
        details: { heightCm },
        toldAt: `${walkedOn}T12:00:00.000Z`,
        key: id,
      };
    }),
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
  await manager.save(
    CowEntity,
    sample.cows.map(({ id, name, herdId, classId, ...details }) => ({
      ...{ id: own(id)!, farmId, name, herdId: own(herdId)!, classId, details },
    })),
  );
}
