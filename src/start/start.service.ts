import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { DeepPartial, EntityManager } from 'typeorm';
import { plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import { overAlready } from '../../shared/farm/absences.js';
import { farmFields, personFields } from '../../shared/farm/farm.js';
import { FREE_TIMES, type StartUsual } from '../../shared/farm/start.js';
import type { StartedFarm } from '../../shared/plan/start/start-farm.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchEntity } from '../batches/batch.entity.js';
import { ClimateEstimateService } from '../climate-estimate/climate-estimate.service.js';
import { toColumns } from '../common/columns-of.js';
import { Database } from '../database/database.js';
import { FacilityEntity } from '../facilities/facility.entity.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { FarmsService } from '../farms/farms.service.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { checkCountry, publicHolidays } from '../holidays/holidays.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PlacesService } from '../places/places.service.js';
import { startDefaults } from '../reference/start-defaults.js';
import { ToldService } from '../told/told.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { StartDto } from './start.dto.js';

/** Begins farms: a plan stands from the first minute, on what was said and what is assumed. */
@Injectable()
export class StartService {
  constructor(
    private readonly database: Database,
    private readonly estimates: ClimateEstimateService,
    private readonly places: PlacesService,
    private readonly jobs: JobsService,
    private readonly farms: FarmsService,
    private readonly told: ToldService,
    private readonly pool: WorkPool,
  ) {}

  /** What a start is made with where nobody says it. */
  usual(): StartUsual {
    const { elevationM, freeTimes } = startDefaults();
    const hours = FREE_TIMES.map((free) => ({
      free,
      hoursByWeekday: [...freeTimes[free].hoursByWeekday],
    }));
    return { elevationM, freeTimes: hours };
  }

  async create(dto: StartDto): Promise<FarmView> {
    checkCountry(dto);
    const elevationM = dto.elevationM ?? (await this.usualHeightM(dto));
    const defaults = { ...startDefaults(), elevationM };
    const estimate = dto.climate ? undefined : this.estimates.find({ ...dto, elevationM });
    const today = plainDateAt(Date.now(), dto.timeZone);
    checkAway(dto, today);
    const where = await this.countryOf(dto);
    const start = { ...dto, ...where };
    const rows = await this.pool.run('startFarm', {
      ...{ start, today, defaults, publicHolidays: publicHolidays(start, today) },
      assumed: Object.keys(where),
      ...(estimate === undefined ? {} : { estimate }),
    });
    const came = rows.headChanges.map(({ batchId, date, birds }) => ({
      ...{ kind: 'arrived' as const, about: batchId, on: date, details: { birds } },
    }));
    const { garden, hives } = defaults.jobSets;
    const id = randomUUID();
    // All of it or nothing: who tries again after an error would have two farms.
    const save = async (manager: EntityManager): Promise<FarmView> => {
      await saveStarted(manager, id, rows, dto.weatherFetch ?? false);
      await this.told.tell(id, came);
      for (const set of dto.hasGarden ? garden : []) await this.jobs.takeUsual(id, set, 1);
      for (const set of dto.hives ? hives : []) await this.jobs.takeUsual(id, set, dto.hives!);
      return this.farms.findOne(id);
    };
    return this.database.writeNew(save, id);
  }

  /** The height of the nearest town, or a middling one where none is near. */
  private async usualHeightM(spot: StartDto): Promise<number> {
    const { townElevationM = startDefaults().elevationM } = await this.places.at(spot, false);
    return townElevationM;
  }

  /** Country and region of the nearest town, where nobody said them and it is sure: else no holiday is known. */
  private async countryOf(dto: StartDto): Promise<Pick<StartDto, 'country' | 'region'>> {
    if (dto.country !== undefined) return {};
    const { country, region } = await this.places.at(dto, false);
    return {
      ...(country === undefined ? {} : { country }),
      ...(region === undefined ? {} : { region }),
    };
  }
}

/** @throws FieldError naming days away that are over: nothing is planned around them */
function checkAway({ people }: StartDto, today: PlainDate): void {
  const problems = people.flatMap(({ away = [] }, i) =>
    away.flatMap(({ to }, k) => overAlready(`people.${i}.away.${k}.to`, to, today)),
  );
  if (0 < problems.length) throw new FieldError(problems);
}

async function saveStarted(
  manager: EntityManager,
  farmId: string,
  { farm, people, facilities, batches, herds, paddocks, pastureChoices }: StartedFarm,
  weatherFetch: boolean,
): Promise<void> {
  await manager.save(
    manager.create(FarmEntity, {
      ...toColumns(farmFields, farm),
      ...{ pasture: pastureChoices, id: farmId, weatherFetch },
    }),
  );
  await manager.save(
    PersonEntity,
    people.map(
      (person) =>
        ({
          ...toColumns(personFields, person),
          id: person.id,
          farmId,
        }) as DeepPartial<PersonEntity>,
    ),
  );
  await manager.save(
    FacilityEntity,
    facilities.map(
      ({ id, kind, name, ...details }) =>
        ({ id, farmId, kind, name, details }) as DeepPartial<FacilityEntity>,
    ),
  );
  await manager.save(
    BatchEntity,
    batches.map(
      ({ id, name, arrivalDate, ...details }) =>
        ({ id, farmId, name, arrivalDate, details }) as DeepPartial<BatchEntity>,
    ),
  );
  await manager.save(
    HerdEntity,
    herds.map(({ id, name, ...details }) => ({ id, farmId, name, details })),
  );
  await manager.save(
    PaddockEntity,
    paddocks.map(({ id, name, ...details }) => ({ id, farmId, name, details })),
  );
}
