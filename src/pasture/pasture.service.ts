import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { LRUCache } from 'lru-cache';
import { DataSource } from 'typeorm';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import { explain, type Explanation } from '../../shared/explain/explanation.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import { followerOf } from '../../shared/plan/pasture/follower.js';
import { moveQuantities } from '../../shared/plan/pasture/moves.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type {
  Follower,
  PastureChoices,
  PastureRequest,
} from '../../shared/plan/pasture/pasture-request.js';
import { checkPasture } from '../../shared/plan/pasture/check-pasture.js';
import { raiseRevision } from '../common/owned-rows.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { FarmsService } from '../farms/farms.service.js';
import { GrassReadingsService } from '../grass-readings/grass-readings.service.js';
import { HerdsService } from '../herds/herds.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { PlansService } from '../plans/plans.service.js';
import { TablesService } from '../reference/tables.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { PastureOrderDto } from './pasture.dto.js';

/** A pasture as the page plans it: all but the tables, which the page has. */
export type PastureOnFarm = Omit<PastureRequest, 'tables'>;

@Injectable()
export class PastureService {
  /** Plans by farm, revision and day: nothing is planned again that did not change. */
  private readonly plans = new SharedAnswers<PasturePlan>(50);
  private readonly requests = new LRUCache<string, PastureRequest>({ max: 50 });

  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly farms: FarmsService,
    private readonly paddocks: PaddocksService,
    private readonly herds: HerdsService,
    private readonly readings: GrassReadingsService,
    private readonly batchPlans: PlansService,
    private readonly tables: TablesService,
    private readonly work: WorkPool,
  ) {}

  async preview(order: PastureOrderDto): Promise<PasturePlan> {
    const asked = { order, tables: this.tables.tables, nowMs: Date.now() };
    return this.work.run('planPastureOrder', asked);
  }

  /** Every number of a pasture's plan, opened to its formula, inputs and sources. */
  async explanations(order: PastureOrderDto): Promise<Explanation[]> {
    const plan = await this.preview(order);
    const moves = plan.moves.flatMap((move) => moveQuantities(plan, move));
    return [...quantitiesIn(plan), ...moves].map((q) => explain(q, this.tables.tables, order.farm));
  }

  async planOf(farmId: string): Promise<PasturePlan> {
    const { key, request } = await this.requestOf(farmId);
    return this.plans.of(key, () => this.work.run('planPasture', request));
  }

  /** What the page needs to plan this farm's pasture itself, so that sliders answer at once. */
  async onFarm(farmId: string): Promise<PastureOnFarm> {
    const { tables: _tables, ...rest } = (await this.requestOf(farmId)).request;
    return rest;
  }

  async choose(farmId: string, choices: PastureChoices): Promise<PastureChoices> {
    const { request } = await this.requestOf(farmId);
    checkPasture({ ...request, choices });
    await this.source.transaction(async (manager) => {
      await raiseRevision(manager, farmId);
      await manager.update(FarmEntity, { id: farmId }, { pasture: { ...choices } });
    });
    return choices;
  }

  private async requestOf(farmId: string): Promise<{ key: string; request: PastureRequest }> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    const key = `${farmId}/${farm.revision}/${today}`;
    const known = this.requests.get(key);
    if (known) return { key, request: known };
    const [row, paddocks, herds, readings, { climate }] = await Promise.all([
      this.farms.findRow(farmId),
      this.paddocks.findAll(farmId),
      this.herds.findAll(farmId),
      this.readings.findAll(farmId),
      this.batchPlans.surroundings(farmId),
    ]);
    const followers: Follower[] = [];
    for (const herd of herds) {
      if (herd.followedByBatchId === undefined) continue;
      const batch = await this.batchPlans.requestOfBatch(farmId, herd.followedByBatchId);
      const follower = batch && followerOf(herd, batch);
      if (follower) followers.push(follower);
    }
    const request: PastureRequest = {
      farm,
      climate,
      tables: this.tables.tables,
      today,
      paddocks,
      herds,
      readings,
      followers,
      choices: choicesOf(row.pasture, paddocks),
    };
    this.requests.set(key, request);
    return { key, request };
  }
}

/** A paddock that is gone is no longer kept for autumn. */
function choicesOf(choices: PastureChoices, paddocks: readonly Paddock[]): PastureChoices {
  const { keepForAutumnIds: kept, ...rest } = choices;
  return kept === undefined
    ? choices
    : { ...rest, keepForAutumnIds: kept.filter((id) => paddocks.some((p) => p.id === id)) };
}
