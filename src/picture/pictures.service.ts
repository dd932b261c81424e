import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import { plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { BatchesService } from '../batches/batches.service.js';
import { FacilitiesService } from '../facilities/facilities.service.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmsService } from '../farms/farms.service.js';
import { GrassReadingsService } from '../grass-readings/grass-readings.service.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { HerdsService } from '../herds/herds.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { PeopleService } from '../people/people.service.js';
import { GroundLookEntity, toGroundLook } from '../season/ground-look.entity.js';
import { KeptPlanEntity, toKeptPlan } from '../season/kept-plan.entity.js';
import { WorkMarkEntity } from '../season/work-mark.entity.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';

/** A saved farm's picture, and a key that changes with it: plans made from it are kept by the key. */
export interface SavedPicture {
  readonly key: string;
  readonly revision: number;
  readonly picture: FarmPicture & { readonly farm: FarmView };
}

/** Pictures of farms from the database, each built once for a revision of its farm and a day. */
@Injectable()
export class PicturesService {
  private readonly pictures = new SharedAnswers<SavedPicture>(50);

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly farms: FarmsService,
    private readonly facilities: FacilitiesService,
    private readonly people: PeopleService,
    private readonly batches: BatchesService,
    private readonly paddocks: PaddocksService,
    private readonly herds: HerdsService,
    private readonly readings: GrassReadingsService,
    private readonly jobs: JobsService,
    private readonly handovers: HandoversService,
    private readonly weather: WeatherService,
  ) {}

  async of(farmId: string): Promise<SavedPicture> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    const key = `${farmId}/${farm.revision}/${today}`;
    return this.pictures.of(key, async () => ({
      key,
      revision: farm.revision,
      picture: await this.build(farm, today),
    }));
  }

  private async build(farm: FarmView, today: PlainDate): Promise<SavedPicture['picture']> {
    const farmId = farm.id;
    const [climate, facilities, people, batches, paddocks, herds, readings] = await Promise.all([
      this.weather.climateOf(farm),
      this.facilities.findAll(farmId),
      this.people.findAll(farmId),
      this.batches.findAll(farmId),
      this.paddocks.findAll(farmId),
      this.herds.findAll(farmId),
      this.readings.findAll(farmId),
    ]);
    const [row, jobs, handovers, marks, looks, kept] = await Promise.all([
      this.farms.findRow(farmId),
      this.jobs.findAll(farmId),
      this.handovers.findAll(farmId),
      this.source.getRepository(WorkMarkEntity).findBy({ farmId }),
      this.source.getRepository(GroundLookEntity).findBy({ farmId }),
      this.source
        .getRepository(KeptPlanEntity)
        .find({ where: { farmId }, order: { plannedOn: 'DESC' }, take: 2 }),
    ]);
    return {
      today,
      farm,
      climate,
      facilities,
      people,
      batches,
      paddocks,
      herds,
      readings,
      pastureChoices: withoutGone(row.pasture, paddocks),
      jobs,
      handovers,
      marks: marks.map(({ key, details }) => ({ key, ...details })),
      groundLooks: looks.map(toGroundLook),
      keptPlans: kept.map(toKeptPlan),
    };
  }
}

/** A paddock that is gone is no longer kept for autumn. */
function withoutGone(choices: PastureChoices, paddocks: readonly Paddock[]): PastureChoices {
  const { keepForAutumnIds: kept, ...rest } = choices;
  return kept === undefined
    ? choices
    : { ...rest, keepForAutumnIds: kept.filter((id) => paddocks.some((p) => p.id === id)) };
}
