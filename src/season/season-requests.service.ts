import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import { groundLooksOf, progressOf } from '../../shared/farm/told-fact.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { isHistory } from '../../shared/plan/planning-day.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { SeasonRequest } from '../../shared/plan/season/season-request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchesService } from '../batches/batches.service.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PeopleService } from '../people/people.service.js';
import { PlansService } from '../plans/plans.service.js';
import { TablesService } from '../reference/tables.service.js';
import { ToldService } from '../told/told.service.js';
import { datedWork, type PlannedBatch } from './dated-work.js';
import { KeptPlanEntity, toKeptPlan } from './kept-plan.entity.js';

/** A farm's season, and the plans that its work comes from. */
export interface SeasonOnFarm {
  readonly request: SeasonRequest;
  readonly batches: readonly PlannedBatch[];
  readonly pasture?: PasturePlan;
}

/** Brings together all that the plan of a farm's work depends on. */
@Injectable()
export class SeasonRequests {
  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly people: PeopleService,
    private readonly batches: BatchesService,
    private readonly batchPlans: PlansService,
    private readonly pasture: PastureService,
    private readonly jobs: JobsService,
    private readonly handovers: HandoversService,
    private readonly told: ToldService,
    private readonly tables: TablesService,
  ) {}

  /** Today on a farm, and a key that changes with it and with every change of the farm. */
  async keyOf(farmId: string): Promise<{ today: string; key: string }> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    return { today, key: `${farmId}/${farm.revision}/${today}` };
  }

  /** @param change of one batch, to ask what it would bring */
  async onFarm(
    farmId: string,
    change?: { readonly batchId: string; readonly to: Partial<Batch> },
  ): Promise<SeasonOnFarm> {
    const { today } = await this.keyOf(farmId);
    const [{ farm, climate }, people, saved, ownJobs, handovers, marks, looks, kept] =
      await Promise.all([
        this.batchPlans.surroundings(farmId),
        this.people.findAll(farmId),
        this.batches.findAll(farmId),
        this.jobs.findAll(farmId),
        this.handovers.findAll(farmId),
        this.told.factsOf(farmId, 'work-progress'),
        this.told.factsOf(farmId, 'ground-check'),
        this.database.manager
          .getRepository(KeptPlanEntity)
          .find({ where: { farmId }, order: { plannedOn: 'DESC' }, take: 2 }),
      ]);
    const unplanned: string[] = [];
    const batches: PlannedBatch[] = [];
    for (const { id, name, arrivalDate } of saved) {
      if (isHistory(arrivalDate, today) && change?.batchId !== id) continue;
      const request = await this.batchPlans.requestOfBatch(farmId, id);
      const batch = request && { ...request.batch, ...(change?.batchId === id ? change.to : {}) };
      const plan = batch && (await orNothing(() => planBatch({ ...request, batch })));
      if (plan) batches.push({ id, name, plan });
      else unplanned.push(name);
    }
    const { paddocks, herds } = await this.pasture.onFarm(farmId);
    const hasGrass = 0 < paddocks.length && 0 < herds.length;
    const pasture = hasGrass ? await orNothing(() => this.pasture.planOf(farmId)) : undefined;
    if (hasGrass && !pasture) unplanned.push(...herds.map(({ name }) => name));
    const before = kept.find(({ plannedOn }) => plannedOn < today);
    return {
      batches,
      ...(pasture ? { pasture } : {}),
      request: {
        farm,
        climate,
        tables: this.tables.tables,
        today,
        people,
        work: datedWork(batches, herds, pasture),
        unplanned,
        ownJobs: ownJobs.filter(({ restingSince }) => restingSince === undefined),
        marks: progressOf(marks),
        groundLooks: groundLooksOf(looks),
        handovers,
        ...(kept[0] ? { kept: toKeptPlan(kept[0]) } : {}),
        ...(before ? { before: toKeptPlan(before) } : {}),
        seed: SEED,
      },
    };
  }
}

/** The same farm gives the same plan: the seed only has to stay what it is. */
const SEED = 1;

/** What cannot be planned leaves the rest of the household's work as it is, and is named. */
async function orNothing<T>(plan: () => T | Promise<T>): Promise<T | undefined> {
  try {
    return await plan();
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
