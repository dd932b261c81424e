import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import { Database } from '../database/database.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmsService } from '../farms/farms.service.js';
import { readSeed } from '../reference/load-tables.js';
import { TablesService } from '../reference/tables.service.js';
import type { Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { WorkService } from '../work/work.service.js';
import { sampleOnDay } from './sample-on-day.js';
import { saveSample } from './save-sample.js';
import { readSample } from './sample-seed.js';

interface Due {
  readonly today: string;
  readonly suffix: string;
  readonly work: Awaited<ReturnType<WorkService['dueBefore']>>;
}

@Injectable()
export class SampleFarmService {
  private due: Due | undefined;

  constructor(
    private readonly database: Database,
    private readonly tables: TablesService,
    private readonly farms: FarmsService,
    private readonly told: ToldService,
    private readonly work: WorkService,
  ) {}

  /** Loads the invented sample farm as it is today, with what its household did up to now. */
  async create(): Promise<FarmView> {
    const farmId = randomUUID();
    const suffix = farmId.slice(0, 8);
    const seed = readSample(readSeed('sample-farm.json'), suffix);
    const today = plainDateAt(Date.now(), seed.farm.timeZone);
    const day = sampleOnDay(seed, { today, jobSets: this.tables.tables.jobSets, suffix });
    const { tables } = this.tables;
    const rows = { farmId, today, seed, day, tables };
    await this.database.writeNew((manager) => saveSample(manager, rows));
    await this.told.tell(farmId, await this.doneBefore(farmId, today, suffix));
    return this.farms.findOne(farmId);
  }

  /** The work of animals that was due before today is done: this household is not behind. */
  private async doneBefore(farmId: string, today: string, suffix: string): Promise<Said[]> {
    // Samples of one day differ in their ids only.
    if (this.due?.today !== today)
      this.due = { today, suffix, work: await this.work.dueBefore(farmId, today) };
    const { suffix: ofFirst, work } = this.due;
    return work.map(({ key, latest }) => ({
      ...{ kind: 'work-progress', about: key.replaceAll(ofFirst, suffix), on: latest },
      details: { doneOn: latest },
    }));
  }
}
