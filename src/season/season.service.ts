import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource, LessThan } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { SeasonRequest } from '../../shared/plan/season/season-request.js';
import type { GroundLook } from '../../shared/farm/ground-look.js';
import type { WorkMark } from '../../shared/farm/job.js';
import type { SeasonComparison } from '../../shared/plan/season/compare-seasons.js';
import type { KeptPlan } from '../../shared/plan/season/kept-plan.js';
import type { SeasonOutlook } from '../../shared/plan/season/season-outlook.js';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { raiseRevision } from '../common/owned-rows.js';
import { storageFaultOf } from '../common/storage-fault.js';
import { TablesService } from '../reference/tables.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { GroundLookEntity } from './ground-look.entity.js';
import { KeptPlanEntity } from './kept-plan.entity.js';
import type { ArrivalMoveDto, GroundLookDto, WorkMarkDto } from './season.dto.js';
import type { HouseholdOrderDto } from './household-order.dto.js';
import { SeasonRequests } from './season-requests.service.js';
import { WorkMarkEntity } from './work-mark.entity.js';

@Injectable()
export class SeasonService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<SeasonPlan>(50);
  private readonly outlooks = new SharedAnswers<SeasonOutlook>(20);

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly requests: SeasonRequests,
    private readonly weather: WeatherService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {}

  async planOf(farmId: string): Promise<SeasonPlan> {
    const { key } = await this.requests.keyOf(farmId);
    return this.plans.of(key, async () => {
      const { request } = await this.requests.onFarm(farmId);
      const { keep, ...plan } = await this.pool.run('planSeason', request);
      await this.keep(farmId, keep);
      return plan;
    });
  }

  /** The work of a household that is not saved. */
  async preview(order: HouseholdOrderDto): Promise<SeasonPlan> {
    const asked = { order, tables: this.tables.tables, nowMs: Date.now() };
    const { keep: _keep, ...plan } = await this.pool.run('planHousehold', asked);
    return plan;
  }

  /** Chances over many years of weather, start-by dates, workable days and frost. */
  async outlookOf(farmId: string): Promise<SeasonOutlook> {
    const { key } = await this.requests.keyOf(farmId);
    return this.outlooks.of(key, async () => {
      const { request } = await this.requests.onFarm(farmId);
      const history = await this.weather.historyOf(farmId);
      return this.pool.run('seasonOutlook', { ...request, history });
    });
  }

  /** What moving an arrival would free or break. Nothing is changed by asking. */
  async ifArrivalMoves(
    farmId: string,
    { batchId, arrivalDate }: ArrivalMoveDto,
  ): Promise<SeasonComparison> {
    const now = await this.requests.onFarm(farmId);
    refuseOutside(arrivalDate, now.request);
    if (!now.batches.some(({ id }) => id === batchId)) {
      throw new FieldError([
        {
          field: 'batchId',
          code: 'not-allowed',
          given: batchId,
          allowed: now.batches.map(({ id }) => id),
          fix: 'Choose a batch of this farm that can be planned.',
        },
      ]);
    }
    const { request } = await this.requests.onFarm(farmId, { batchId, to: { arrivalDate } });
    const { kept: _kept, ...then } = request;
    return this.pool.run('compareSeasons', { now: now.request, then });
  }

  /** Ticks work off, puts it off, or opens it again; what it took is kept with what was reckoned. */
  async mark(farmId: string, { key, ...details }: WorkMarkDto): Promise<WorkMark> {
    const { today } = await this.requests.keyOf(farmId);
    if (details.doneOn !== undefined) refuseFuture('doneOn', details.doneOn, today);
    const job =
      details.hours === undefined
        ? undefined
        : (await this.planOf(farmId)).jobs.find((each) => each.key === key);
    const mark = {
      ...details,
      ...(job ? { reckonedHours: job.learned?.reckonedHours ?? job.hours } : {}),
      ...(job?.kind === undefined ? {} : { kind: job.kind }),
    };
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(WorkMarkEntity);
      if (Object.values(details).every((each) => each === undefined))
        await rows.delete({ farmId, key });
      else await rows.save({ farmId, key, details: mark });
    });
    return { key, ...mark };
  }

  /** What was found when the ground was looked at; without an answer the look is forgotten. */
  async look(farmId: string, { date, isWorkable }: GroundLookDto): Promise<Partial<GroundLook>> {
    const { today } = await this.requests.keyOf(farmId);
    refuseFuture('date', date, today);
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      const rows = manager.getRepository(GroundLookEntity);
      if (isWorkable === undefined) await rows.delete({ farmId, date });
      else await rows.save({ farmId, date, isWorkable });
    });
    return { date, ...(isWorkable === undefined ? {} : { isWorkable }) };
  }

  /** Keeps the last plan of today and that of the last day before it. */
  private async keep(farmId: string, { plannedOn, jobs }: KeptPlan): Promise<void> {
    const rows = this.source.getRepository(KeptPlanEntity);
    try {
      await rows.upsert({ farmId, plannedOn, jobs }, ['farmId', 'plannedOn']);
      const [, before] = await rows.find({
        where: { farmId },
        order: { plannedOn: 'DESC' },
        take: 2,
      });
      if (before) await rows.delete({ farmId, plannedOn: LessThan(before.plannedOn) });
    } catch (error) {
      // The plan is there all the same: a full disk does not keep it from being read.
      if (storageFaultOf(error)) return;
      // A farm that was deleted while its work was planned keeps nothing, and is not found.
      await this.requests.keyOf(farmId);
      throw error;
    }
  }
}

/** Beyond the days of a plan nothing can be compared. */
function refuseOutside(arrivalDate: string, { today, tables }: SeasonRequest): void {
  const last = addDays(today, tables.work.horizonDays.value - 1);
  if (today <= arrivalDate && arrivalDate <= last) return;
  throw new FieldError([
    {
      field: 'arrivalDate',
      code: 'out-of-bounds',
      given: arrivalDate,
      min: today,
      max: last,
      fix: 'Ask about a day within the plan; change the batch itself for any other.',
    },
  ]);
}

function refuseFuture(field: string, given: string, today: string): void {
  if (given <= today) return;
  throw new FieldError([
    {
      field,
      code: 'out-of-bounds',
      given,
      max: today,
      fix: 'Give the day on which it was so; what is to come cannot be written down yet.',
    },
  ]);
}
