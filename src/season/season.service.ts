import { Injectable } from '@nestjs/common';
import { LessThan } from 'typeorm';
import { addDays } from '../../shared/calendar/plain-date.js';
import { FARM_GROUND } from '../../shared/farm/told-fact.js';
import { isWorkKey, notAKey } from '../../shared/farm/told-kinds.js';
import type { SeasonRequest } from '../../shared/plan/season/season-request.js';
import type { GroundLook } from '../../shared/farm/ground-look.js';
import type { WorkMark } from '../../shared/farm/job.js';
import type { SeasonComparison } from '../../shared/plan/season/compare-seasons.js';
import type { KeptPlan } from '../../shared/plan/season/kept-plan.js';
import type { SeasonOutlook } from '../../shared/plan/season/season-outlook.js';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { TablesService } from '../reference/tables.service.js';
import type { Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { KeptPlanEntity } from './kept-plan.entity.js';
import type { ArrivalMoveDto, GroundLookDto, WorkMarkDto } from './season.dto.js';
import type { HouseholdOrderDto } from './household-order.dto.js';
import { seasonOfHousehold } from './household-order.js';
import { SeasonRequests } from './season-requests.service.js';

@Injectable()
export class SeasonService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<SeasonPlan>(50);
  private readonly outlooks = new SharedAnswers<SeasonOutlook>(20);

  constructor(
    private readonly database: Database,
    private readonly requests: SeasonRequests,
    private readonly weather: WeatherService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
    private readonly told: ToldService,
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
    const { request } = seasonOfHousehold(order, this.tables.tables, Date.now());
    const { keep: _keep, ...plan } = await this.pool.run('planSeason', request);
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
    if (!isWorkKey(key)) throw new FieldError([notAKey(key, 'key')]);
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
    if (Object.values(details).every((each) => each === undefined)) {
      await this.told.takeBackAbout(farmId, 'work-progress', ({ about }) => about === key);
    } else {
      const on = details.doneOn ?? today;
      const said = { kind: 'work-progress', about: key, on, details: mark } as const;
      await this.told.tell(farmId, [said], (_k, field) =>
        field === 'on' ? 'doneOn' : field.replace(/^details\./, ''),
      );
    }
    return { key, ...mark };
  }

  /** What was found when the ground was looked at; without an answer the look is forgotten. */
  async look(farmId: string, { date, isWorkable }: GroundLookDto): Promise<Partial<GroundLook>> {
    const { today } = await this.requests.keyOf(farmId);
    refuseFuture('date', date, today);
    if (isWorkable === undefined) {
      await this.told.takeBackAbout(farmId, 'ground-check', ({ on }) => on === date);
    } else {
      const said = { kind: 'ground-check', about: FARM_GROUND, on: date, details: { isWorkable } };
      await this.told.tell(farmId, [said as Said], () => 'date');
    }
    return { date, ...(isWorkable === undefined ? {} : { isWorkable }) };
  }

  /** Keeps the last plan of today and that of the last day before it. */
  private async keep(farmId: string, { plannedOn, jobs }: KeptPlan): Promise<void> {
    // A farm that was deleted while its work was planned keeps nothing, and is not found.
    await this.database.write(
      farmId,
      async (manager) => {
        const rows = manager.getRepository(KeptPlanEntity);
        await rows.upsert({ farmId, plannedOn, jobs }, ['farmId', 'plannedOn']);
        const [, before] = await rows.find({
          where: { farmId },
          order: { plannedOn: 'DESC' },
          take: 2,
        });
        if (before) await rows.delete({ farmId, plannedOn: LessThan(before.plannedOn) });
      },
      { raises: false },
    );
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
