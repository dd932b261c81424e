import { Injectable } from '@nestjs/common';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { ToldFact, ToldKind } from '../../shared/farm/told-fact.js';
import { MOVES_BATCH } from '../../shared/farm/without-fact.js';
import type { ChangedByFact } from '../../shared/plan/record/changed-by-fact.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import { paddockYears, type PaddockYear } from '../../shared/plan/record/paddock-year.js';
import { yearCounts } from '../../shared/plan/record/year-counts.js';
import {
  againstLimits,
  type AgainstLimit,
  type CountedYear,
} from '../../shared/plan/record/year-limits.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { BatchesService } from '../batches/batches.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { ToldService } from '../told/told.service.js';
import { TablesService } from '../reference/tables.service.js';
import { WorkPool } from '../work-pool/work-pool.service.js';

/** Reads what was told beside what was planned. Nothing of it is kept: the told facts are. */
@Injectable()
export class RecordService {
  constructor(
    private readonly batches: BatchesService,
    private readonly pictures: PicturesService,
    private readonly told: ToldService,
    private readonly work: WorkPool,
    private readonly tables: TablesService,
  ) {}

  async ofBatches(farmId: string): Promise<HowItWent[]> {
    const { picture } = await this.pictures.of(farmId);
    return this.work.run('recordOfBatches', { picture, facts: await this.factsOf(farmId) });
  }

  async ofBatch(farmId: string, batchId: string): Promise<HowItWent> {
    await this.batches.findOne(farmId, batchId);
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOfBatch(farmId, batchId, OF_BATCHES);
    return this.work.run('recordOfBatch', { picture, batchId, facts });
  }

  /** What a fact changed in the plan of its batch. */
  async changedBy(farmId: string, factId: string): Promise<ChangedByFact> {
    const { picture } = await this.pictures.of(farmId);
    const fact = await this.told.findOne(farmId, factId);
    const facts = await this.told.factsOf(farmId, ...MOVES_BATCH);
    return this.work.run('changedByFact', { picture, fact, facts });
  }

  /** @throws FieldError when it is no year that a farm can have a record of */
  async ofYear(farmId: string, asked: string): Promise<CountedYear> {
    const year = yearOf(asked);
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOfYear(farmId, year, COUNTED);
    const counts = yearCounts(year, facts, picture.farm.currency);
    const limits = againstLimits(counts, picture.farm.yearLimits);
    return { ...counts, limits: await this.withPlanned(limits, picture, year) };
  }

  /** Birds that the plans of this year still come to, beside those that were told. */
  private async withPlanned(
    limits: readonly AgainstLimit[],
    picture: FarmPicture,
    year: number,
  ): Promise<AgainstLimit[]> {
    const isAsked = limits.some(({ of }) => of === 'birdsProcessed');
    if (!isAsked || year < Number(picture.today.slice(0, 4))) return [...limits];
    const planned = await this.work.run('stillToProcess', { picture, year });
    return limits.map((each) => (each.of === 'birdsProcessed' ? { ...each, planned } : each));
  }

  /** What each paddock carried in a calendar year. */
  async ofPaddocks(farmId: string, asked: string): Promise<PaddockYear[]> {
    const year = yearOf(asked);
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOf(farmId, 'herd-move', 'paddock-mown');
    return paddockYears(picture, this.tables.tables, { year, facts });
  }

  private factsOf(farmId: string): Promise<ToldFact[]> {
    return this.told.factsOf(farmId, ...OF_BATCHES);
  }
}

export const OF_BATCHES = [
  ...(['arrived', 'died', 'processed', 'gone', 'feed-opened'] as const),
  ...(['bought', 'eggs-counted', 'work-progress'] as const),
] as const satisfies readonly ToldKind[];

const COUNTED = [
  ...(['arrived', 'died', 'processed', 'gone', 'eggs-counted'] as const),
  ...(['eggs-gone', 'milked', 'calved', 'bought'] as const),
] as const satisfies readonly ToldKind[];

const [FIRST_YEAR, LAST_YEAR] = [1900, 2200];

/** @throws FieldError when it is no year that a farm can have a record of */
export function yearOf(asked: string): number {
  const year = /^\d{4}$/.test(asked) ? Number(asked) : NaN;
  if (!(FIRST_YEAR <= year && year <= LAST_YEAR)) throw new FieldError([noYear(asked)]);
  return year;
}

const noYear = (given: string) =>
  ({
    field: 'year',
    code: 'out-of-bounds',
    given: given.slice(0, 40),
    min: FIRST_YEAR,
    max: LAST_YEAR,
    fix: 'Give a calendar year in four digits, such as 2027.',
  }) as const;
