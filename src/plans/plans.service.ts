import { Injectable } from '@nestjs/common';
import { plainDateAt, type PlainDate } from '../../shared/calendar/plain-date.js';
import type { BatchChoice } from '../../shared/farm/batch-choice.js';
import { withBatch, type FarmPicture } from '../../shared/farm/picture.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import type { ReadyBy } from '../../shared/plan/ready-by.js';
import { planningDay } from '../../shared/plan/planning-day.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchesService } from '../batches/batches.service.js';
import { FeedService } from '../feed/feed.service.js';
import { pictureOfDocument } from '../picture/farm-document.js';
import { PicturesService } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import type { AskedBatch, FetchedBatch } from '../work-pool/tasks.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { ArrivalSearchDto, OrderDto, ReadyByDto } from '../documents/order.dto.js';
import type { CheckedOrder } from './order.pipe.js';

/** Plans of batches as the bytes of JSON to send: they are made, and written, in another thread. */
@Injectable()
export class PlansService {
  private readonly answers = new SharedAnswers<Uint8Array>(60);
  /** By farm, revision and day: nothing is dated again that did not change. */
  private readonly ends = new SharedAnswers<Record<string, PlainDate>>(50);

  constructor(
    private readonly batches: BatchesService,
    private readonly pictures: PicturesService,
    private readonly tables: TablesService,
    private readonly work: WorkPool,
    private readonly feed: FeedService,
  ) {}

  /** The plan of an order. An order asked for again the same day is not planned again. */
  async preview({ order, key }: CheckedOrder): Promise<Uint8Array> {
    const plan = async () => this.work.run('planBatch', await this.askedOf(order));
    if (!order.farm || order.farmId !== undefined) return plan();
    const today = order.today ?? plainDateAt(Date.now(), order.farm.timeZone);
    return this.answers.of(today + key, plan);
  }

  /** Every number of an order's plan, opened to its formula, inputs and sources. */
  async explanations(order: OrderDto): Promise<Uint8Array> {
    return this.work.run('explainBatch', await this.askedOf(order));
  }

  async arrivals(search: ArrivalSearchDto): Promise<ArrivalWeek[]> {
    const { from, to, weekday } = search;
    return this.work.run('findArrivals', {
      ...(await this.askedOf(search)),
      search: { from, to, ...(weekday === undefined ? {} : { weekday }) },
    });
  }

  async readyBy(asked: ReadyByDto): Promise<ReadyBy> {
    const { goal, on, weekday } = asked;
    return this.work.run('readyBy', {
      ...(await this.askedOf(asked)),
      goal: { goal, on, ...(weekday === undefined ? {} : { weekday }) },
    });
  }

  /** The plan of a saved batch. */
  async planOf(farmId: string, batchId: string): Promise<Uint8Array> {
    return this.work.run('planBatch', await this.saved(farmId, batchId));
  }

  /** What a saved batch must bring, and when it has had enough feed. */
  async costOf(farmId: string, batchId: string): Promise<Uint8Array> {
    return this.work.run('batchCost', await this.fetched(farmId, batchId));
  }

  /** A saved batch beside other ways to raise it. */
  async compare(
    farmId: string,
    batchId: string,
    choices: readonly BatchChoice[],
  ): Promise<Uint8Array> {
    return this.work.run('compareBatch', { ...(await this.fetched(farmId, batchId)), choices });
  }

  private async fetched(farmId: string, batchId: string): Promise<FetchedBatch> {
    const asked = await this.saved(farmId, batchId);
    return { ...asked, fetching: (await this.feed.of(farmId)).fetching };
  }

  private async saved(farmId: string, batchId: string): Promise<AskedBatch> {
    const batch = await this.batches.findOne(farmId, batchId);
    const { picture } = await this.pictures.of(farmId);
    const today = planningDay(batch, picture.today);
    return { picture: { ...picture, today }, batchId };
  }

  /** The day on which each saved batch ends, by its id, as its plan says it. */
  async endsOf(farmId: string): Promise<Record<string, PlainDate>> {
    const { key, picture } = await this.pictures.of(farmId);
    return this.ends.of(key, () => this.work.run('batchEnds', picture));
  }

  private async askedOf(order: OrderDto): Promise<AskedBatch> {
    const { batch, previousArrivalDate } = order;
    const batchId = batch.id ?? NEW_BATCH;
    const picture = withBatch(await this.pictureOf(order), { ...batch, id: batchId });
    return {
      picture,
      batchId,
      ...(previousArrivalDate === undefined ? {} : { previousArrivalDate }),
    };
  }

  private async pictureOf(order: OrderDto): Promise<FarmPicture> {
    if (order.farmId === undefined) {
      const { farm } = order;
      if (!farm) throw new FieldError([NO_FARM]);
      return pictureOfDocument({ ...order, farm }, this.tables.tables, Date.now());
    }
    const { picture } = await this.pictures.of(order.farmId);
    return order.today === undefined ? picture : { ...picture, today: order.today };
  }
}

/** No saved batch has it: ids are random. */
const NEW_BATCH = 'new';

const NO_FARM = {
  field: 'farm',
  code: 'missing',
  given: undefined,
  fix: 'Give a farm, or the id of a saved one as farmId.',
} as const;
