import { Injectable } from '@nestjs/common';
import { LessThan, type EntityManager } from 'typeorm';
import { addDays, type PlainDate } from '../../shared/calendar/plain-date.js';
import { FARM_GROUND } from '../../shared/farm/told-fact.js';
import { isWorkKey, notAKey } from '../../shared/farm/told-kinds.js';
import type { GroundCheck } from '../../shared/farm/ground-check.js';
import type { Progress } from '../../shared/farm/job.js';
import type { WorkComparison } from '../../shared/plan/work/compare-plans.js';
import type { KeptPlan } from '../../shared/farm/kept-plan.js';
import { withBatch } from '../../shared/farm/picture.js';
import { refuseUnplannable } from '../../shared/plan/farm/check-picture.js';
import type { Today } from '../../shared/plan/today/today.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../shared/plan/work/work-plan.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { storageFaultOf } from '../common/storage-fault.js';
import { Database } from '../database/database.js';
import { PastureService } from '../pasture/pasture.service.js';
import type { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { pictureOfDocument } from '../picture/farm-document.js';
import { PicturesService } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import type { Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import type { PlannedWork } from '../work-pool/tasks.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { KeptPlanEntity } from './kept-plan.entity.js';
import type { ArrivalMoveDto, GroundLookDto, ProgressDto } from './work.dto.js';

@Injectable()
export class WorkService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<Omit<PlannedWork, 'keep'>>(50);
  private readonly outlooks = new SharedAnswers<WorkOutlook>(20);

  constructor(
    private readonly database: Database,
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly weather: WeatherService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
    private readonly told: ToldService,
  ) {}

  async planOf(farmId: string): Promise<WorkPlan> {
    return (await this.planned(farmId)).plan;
  }

  /** The day that it is on a farm, out of the plans of its animals and its work. */
  async dayOf(farmId: string): Promise<Today> {
    return (await this.planned(farmId)).day;
  }

  private async planned(farmId: string): Promise<Omit<PlannedWork, 'keep'>> {
    const saved = await this.pictures.of(farmId);
    return this.plans.of(saved.key, async () => {
      const asked = await this.pasture.planned(saved);
      const { keep, ...planned } = await this.pool.run('planWork', asked);
      await this.keep(farmId, keep);
      return planned;
    });
  }

  /** The work of a household that is not saved. */
  async preview(document: FarmDocumentDto): Promise<WorkPlan> {
    const picture = pictureOfDocument(document, this.tables.tables, Date.now());
    refuseUnplannable(picture, this.tables.tables);
    return (await this.pool.run('planWork', { picture })).plan;
  }

  /** Chances over many years of weather, start-by dates, workable days and frost. */
  async outlookOf(farmId: string): Promise<WorkOutlook> {
    const saved = await this.pictures.of(farmId);
    return this.outlooks.of(saved.key, async () => {
      const history = await this.weather.historyOf(farmId);
      return this.pool.run('workOutlook', { ...(await this.pasture.planned(saved)), history });
    });
  }

  /** What moving an arrival would free or break. Nothing is changed by asking. */
  async ifArrivalMoves(
    farmId: string,
    { batchId, arrivalDate }: ArrivalMoveDto,
  ): Promise<WorkComparison> {
    const saved = await this.pictures.of(farmId);
    const { picture } = saved;
    refuseOutside(arrivalDate, picture.today, this.tables.tables);
    const batch = picture.batches.find(({ id }) => id === batchId);
    if (!batch) {
      throw new FieldError([
        {
          field: 'batchId',
          code: 'not-allowed',
          given: batchId,
          allowed: picture.batches.map(({ id }) => id),
          fix: 'Choose a batch of this farm.',
        },
      ]);
    }
    const now = await this.pasture.planned(saved);
    const moved = withBatch(picture, { ...batch, arrivalDate });
    // Birds that follow a herd move with their batch; else the grass is as it was.
    const isFollower = picture.herds.some((herd) => herd.followedByBatchId === batchId);
    return this.pool.run('compareWork', {
      now,
      then: isFollower ? { picture: moved } : { ...now, picture: moved },
    });
  }

  /** Ticks work off, puts it off, or opens it again; what it took is kept with what was reckoned. */
  async tellProgress(farmId: string, { key, ...details }: ProgressDto): Promise<Progress> {
    const { today } = (await this.pictures.of(farmId)).picture;
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
  async look(farmId: string, { date, isWorkable }: GroundLookDto): Promise<Partial<GroundCheck>> {
    const { today } = (await this.pictures.of(farmId)).picture;
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
    try {
      // A farm that was deleted while its work was planned keeps nothing, and is not found.
      await this.database.write(farmId, (manager) => keepPlan(manager, farmId, plannedOn, jobs), {
        raises: false,
      });
    } catch (error) {
      // The plan is there all the same: a full disk does not keep it from being read.
      if (!storageFaultOf(error)) throw error;
    }
  }
}

async function keepPlan(
  manager: EntityManager,
  farmId: string,
  plannedOn: PlainDate,
  jobs: KeptPlan['jobs'],
): Promise<void> {
  const rows = manager.getRepository(KeptPlanEntity);
  await rows.upsert({ farmId, plannedOn, jobs }, ['farmId', 'plannedOn']);
  const [, before] = await rows.find({ where: { farmId }, order: { plannedOn: 'DESC' }, take: 2 });
  if (before) await rows.delete({ farmId, plannedOn: LessThan(before.plannedOn) });
}

/** Beyond the days of a plan nothing can be compared. */
function refuseOutside(arrivalDate: string, today: string, tables: Tables): void {
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
