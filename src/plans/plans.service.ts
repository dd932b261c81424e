import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch, Occupancy } from '../../shared/farm/batch.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import { planBatch, type BatchPlan } from '../../shared/plan/batch-plan.js';
import { explain, type Explanation } from '../../shared/explain/explanation.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import { taskHours } from '../../shared/plan/tasks.js';
import { planContext } from '../../shared/plan/context.js';
import { occupanciesOf } from '../../shared/plan/occupancy.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { BatchesService } from '../batches/batches.service.js';
import { FacilitiesService } from '../facilities/facilities.service.js';
import { FarmsService } from '../farms/farms.service.js';
import { PeopleService } from '../people/people.service.js';
import { TablesService } from '../reference/tables.service.js';
import { WeatherService } from '../weather/weather.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { ArrivalSearchDto, OrderDto } from './order.dto.js';
import type { CheckedOrder } from './order.pipe.js';
import { requestOfOrder } from './order-request.js';

/** A farm with everything a plan needs of it, as of one revision. */
type FarmSnapshot = Omit<PlanRequest, 'batch' | 'occupied' | 'today' | 'tables'> & {
  readonly batches: readonly (Batch & { id: string })[];
};

@Injectable()
export class PlansService {
  /** Snapshots and occupancies by farm and revision: nothing is read again that did not change. */
  private readonly snapshots = new LRUCache<string, FarmSnapshot>({ max: 50 });
  private readonly answers = new LRUCache<string, Buffer>({ max: 200 });
  private readonly occupancies = new LRUCache<string, readonly Occupancy[]>({ max: 500 });

  constructor(
    private readonly farms: FarmsService,
    private readonly facilities: FacilitiesService,
    private readonly people: PeopleService,
    private readonly batches: BatchesService,
    private readonly weather: WeatherService,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {}

  /** The plan of an order as JSON bytes. An order asked for again the same day is not planned again. */
  async preview({ order, key }: CheckedOrder): Promise<Buffer> {
    const request = await this.requestOf(order);
    if (order.farmId !== undefined) return bytesOf(planBatch(request));
    const dayKey = `${request.today}${key}`;
    const known = this.answers.get(dayKey);
    if (known !== undefined) return known;
    const bytes = bytesOf(planBatch(request));
    this.answers.set(dayKey, bytes);
    return bytes;
  }

  /** Every number of an order's plan, opened to its formula, inputs and sources. */
  async explanations(order: OrderDto): Promise<Explanation[]> {
    const request = await this.requestOf(order);
    const { tables } = this.tables;
    const plan = planBatch(request);
    const hours = plan.tasks.tasks.map((t) =>
      taskHours(t, tables.taskTemplates, plan.birds.placed.value),
    );
    return [...quantitiesIn(plan), ...hours].map((q) => explain(q, tables, request.farm));
  }

  async arrivals(search: ArrivalSearchDto): Promise<ArrivalWeek[]> {
    const { from, to, weekday } = search;
    const options = { from, to, ...(weekday === undefined ? {} : { weekday }) };
    return this.pool.run('findArrivals', { request: await this.requestOf(search), options });
  }

  /** The plan of a saved batch. */
  async planOf(farmId: string, batchId: string): Promise<BatchPlan> {
    const batch = await this.batches.findOne(farmId, batchId);
    return planBatch(await this.requestOnFarm(farmId, batch));
  }

  /** What a farm's batches hold on to, for a page that plans in the browser. */
  async occupied(farmId: string, exceptBatchId?: string): Promise<readonly Occupancy[]> {
    const { revision, snapshot } = await this.snapshotOf(farmId);
    return this.occupiedBy(farmId, revision, snapshot, exceptBatchId);
  }

  /** The farm, its weather and what else every plan of it shares. */
  async surroundings(farmId: string): Promise<Pick<FarmSnapshot, 'farm' | 'climate'>> {
    return (await this.snapshotOf(farmId)).snapshot;
  }

  /** A saved batch as a plan request, or undefined when it is gone. */
  async requestOfBatch(farmId: string, batchId: string): Promise<PlanRequest | undefined> {
    const { snapshot } = await this.snapshotOf(farmId);
    const batch = snapshot.batches.find((each) => each.id === batchId);
    return batch && this.requestOnFarm(farmId, batch);
  }

  private async requestOf(order: OrderDto): Promise<PlanRequest> {
    if (order.farmId === undefined) return requestOfOrder(order, this.tables.tables, Date.now());
    const request = await this.requestOnFarm(order.farmId, order.batch, order.today);
    return order.previousArrivalDate === undefined
      ? request
      : { ...request, previousArrivalDate: order.previousArrivalDate };
  }

  private async requestOnFarm(farmId: string, batch: Batch, today?: string): Promise<PlanRequest> {
    const { revision, snapshot } = await this.snapshotOf(farmId);
    const { batches: _batches, ...farm } = snapshot;
    return {
      ...farm,
      batch,
      occupied: this.occupiedBy(farmId, revision, snapshot, batch.id),
      tables: this.tables.tables,
      today: today ?? plainDateAt(Date.now(), snapshot.farm.timeZone),
    };
  }

  private async snapshotOf(farmId: string): Promise<{ revision: number; snapshot: FarmSnapshot }> {
    const farm = await this.farms.findOne(farmId);
    const key = `${farmId}/${farm.revision}`;
    const known = this.snapshots.get(key);
    if (known) return { revision: farm.revision, snapshot: known };
    const [facilities, people, batches, climate] = await Promise.all([
      this.facilities.findAll(farmId),
      this.people.findAll(farmId),
      this.batches.findAll(farmId),
      this.weather.climateOf(farm),
    ]);
    const snapshot = { farm, facilities, people, batches, climate };
    this.snapshots.set(key, snapshot);
    return { revision: farm.revision, snapshot };
  }

  private occupiedBy(
    farmId: string,
    revision: number,
    snapshot: FarmSnapshot,
    exceptBatchId: string | undefined,
  ): readonly Occupancy[] {
    return snapshot.batches
      .filter((b) => b.id !== exceptBatchId)
      .flatMap((batch) => {
        const key = `${farmId}/${revision}/${batch.id}`;
        const known = this.occupancies.get(key);
        if (known) return known;
        const held = heldOrNothing(() =>
          occupanciesOf(
            planContext({
              ...snapshot,
              batch,
              occupied: [],
              tables: this.tables.tables,
              today: batch.arrivalDate,
            }),
          ),
        );
        this.occupancies.set(key, held);
        return held;
      });
  }
}

const bytesOf = (plan: BatchPlan): Buffer => Buffer.from(JSON.stringify(plan));

/** A saved batch whose strain or table is gone holds nothing, rather than blocking its whole farm. */
function heldOrNothing(hold: () => readonly Occupancy[]): readonly Occupancy[] {
  try {
    return hold();
  } catch {
    return [];
  }
}
