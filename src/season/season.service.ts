import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { WorkMark } from '../../shared/farm/job.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import type { DatedWork, SeasonRequest } from '../../shared/plan/season/season-request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchesService } from '../batches/batches.service.js';
import { checkId, raiseRevision } from '../common/owned-rows.js';
import { FarmsService } from '../farms/farms.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PeopleService } from '../people/people.service.js';
import { PlansService } from '../plans/plans.service.js';
import { TablesService } from '../reference/tables.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { WorkMarkEntity } from './work-mark.entity.js';
import type { WorkMarkDto } from './season.dto.js';

/** The same farm gives the same plan: the seed only has to stay what it is. */
const SEED = 1;

@Injectable()
export class SeasonService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<SeasonPlan>(50);

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly farms: FarmsService,
    private readonly people: PeopleService,
    private readonly batches: BatchesService,
    private readonly batchPlans: PlansService,
    private readonly pasture: PastureService,
    private readonly jobs: JobsService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {}

  async planOf(farmId: string): Promise<SeasonPlan> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    return this.plans.of(`${farmId}/${farm.revision}/${today}`, async () =>
      this.pool.run('planSeason', await this.requestOf(farmId, today)),
    );
  }

  async mark(farmId: string, { key, ...details }: WorkMarkDto): Promise<WorkMark> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    if (details.doneOn !== undefined && today < details.doneOn) {
      throw new FieldError([
        {
          field: 'doneOn',
          code: 'out-of-bounds',
          given: details.doneOn,
          max: today,
          fix: 'Give the day on which it was done; work to come cannot be ticked off.',
        },
      ]);
    }
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(WorkMarkEntity);
      if (details.doneOn === undefined && details.notBefore === undefined)
        await rows.delete({ farmId, key });
      else await rows.save({ farmId, key, details });
    });
    return { key, ...details };
  }

  private async requestOf(farmId: string, today: string): Promise<SeasonRequest> {
    checkId(farmId);
    const [{ farm, climate }, people, batches, ownJobs, marks] = await Promise.all([
      this.batchPlans.surroundings(farmId),
      this.people.findAll(farmId),
      this.batches.findAll(farmId),
      this.jobs.findAll(farmId),
      this.source.getRepository(WorkMarkEntity).findBy({ farmId }),
    ]);
    const work: DatedWork[] = [];
    const unplanned: string[] = [];
    for (const batch of batches) {
      const request = await this.batchPlans.requestOfBatch(farmId, batch.id);
      const tasks = request && (await orNothing(() => planBatch(request).tasks.tasks));
      if (tasks) work.push({ id: batch.id, name: batch.name, kind: 'batch', tasks });
      else unplanned.push(batch.name);
    }
    const { paddocks, herds } = await this.pasture.onFarm(farmId);
    if (0 < paddocks.length && 0 < herds.length) {
      const tasks = await orNothing(async () => (await this.pasture.planOf(farmId)).tasks);
      if (!tasks) unplanned.push(...herds.map(({ name }) => name));
      for (const { id, name } of tasks ? herds : [])
        work.push({ id, name, kind: 'herd', tasks: tasks!.filter((t) => t.herdId === id) });
    }
    return {
      farm,
      climate,
      tables: this.tables.tables,
      today,
      people,
      work,
      unplanned,
      ownJobs,
      marks: marks.map(({ key, details }) => ({ key, ...details })),
      seed: SEED,
    };
  }
}

/** What cannot be planned leaves the rest of the household's work as it is, and is named. */
async function orNothing<T>(plan: () => T | Promise<T>): Promise<T | undefined> {
  try {
    return await plan();
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
