import { Injectable } from '@nestjs/common';
import type { FarmPicture } from '../../shared/farm/picture.js';
import type { ToldFact, ToldKind } from '../../shared/farm/told-fact.js';
import { MOVES_BATCH } from '../../shared/farm/without-fact.js';
import { byBreed, type BreedSum } from '../../shared/plan/record/by-breed.js';
import type { ChangedByFact } from '../../shared/plan/record/changed-by-fact.js';
import { boughtFrom } from '../../shared/plan/record/feed-paid.js';
import { howItWent, type HowItWent } from '../../shared/plan/record/how-it-went.js';
import {
  paddocksByYear,
  paddockYears,
  type PaddocksOfYear,
  type PaddockYear,
} from '../../shared/plan/record/paddock-year.js';
import type { PlannedOfBatch } from '../../shared/plan/record/planned-of-batch.js';
import {
  learnedFromBatches,
  type LearnedFromBatches,
} from '../../shared/plan/record/own-batches.js';
import { asOrdered } from '../../shared/plan/record/record-of-batch.js';
import { usualRainMm } from '../../shared/plan/record/rain-told.js';
import { yearCounts } from '../../shared/plan/record/year-counts.js';
import {
  againstLimits,
  type AgainstLimit,
  type CountedYear,
} from '../../shared/plan/record/year-limits.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { BatchesService } from '../batches/batches.service.js';
import { PicturesService, type SavedPicture } from '../picture/pictures.service.js';
import { ToldService } from '../told/told.service.js';
import { TablesService } from '../reference/tables.service.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { signatureOf } from '../work-pool/signature.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import type { LearnedDto } from './learned.dto.js';

/** Reads what was told beside what was planned. Nothing of it is kept: the told facts are. */
@Injectable()
export class RecordService {
  private readonly ordered = new SharedAnswers<PlannedOfBatch>(PLANS_KEPT);
  /** Birds still to be processed, by farm, revision, day and year. */
  private readonly planned = new SharedAnswers<number>(50);

  constructor(
    private readonly batches: BatchesService,
    private readonly pictures: PicturesService,
    private readonly told: ToldService,
    private readonly work: WorkPool,
    private readonly tables: TablesService,
  ) {}

  async ofBatches(farmId: string): Promise<HowItWent[]> {
    const { picture } = await this.pictures.of(farmId);
    return this.work.run('recordOfBatches', {
      picture,
      facts: await this.factsOf(farmId),
    });
  }

  async ofBatch(farmId: string, batchId: string): Promise<HowItWent> {
    const { picture, revision } = await this.pictures.of(farmId);
    const { arrivalDate } =
      picture.batches.find(({ id }) => id === batchId) ??
      (await this.batches.findOne(farmId, batchId));
    const plan = await this.asOrdered(picture, batchId);
    const since = boughtFrom(arrivalDate);
    const facts = await this.told.factsOfBatch(farmId, batchId, {
      kinds: OF_BATCHES,
      since,
      at: revision,
    });
    return howItWent({ batchId, plan, facts, today: picture.today });
  }

  /**
   * What the farm's own batches say of another one of the same breed or cross.
   *
   * @throws FieldError when the table of breeds knows no such one
   */
  async learned(farmId: string, asked: LearnedDto): Promise<LearnedFromBatches> {
    const { tables } = this.tables;
    refuseUnknownStrain(asked.strainId, tables);
    const { picture } = await this.pictures.of(farmId);
    const batches = picture.batches
      .filter(({ strainId, purpose }) => strainId === asked.strainId && purpose === asked.purpose)
      .filter(({ arrivalDate }) => arrivalDate <= picture.today)
      .sort((a, b) => (a.arrivalDate < b.arrivalDate ? 1 : -1))
      .slice(0, LEARNED_FROM);
    const went: HowItWent[] = [];
    const facts: ToldFact[] = [];
    for (const { id } of batches) {
      const how = await this.ofBatch(farmId, id).catch(unlessUnplannable);
      if (!how) continue;
      went.push(how);
      facts.push(...(await this.told.factsAbout(farmId, id, ['arrived', 'died'])));
    }
    return learnedFromBatches(asked, { batches, went, facts }, tables, picture.farm);
  }

  /** The plan of a batch with nothing told of it: made once, however much is told of the batch. */
  private asOrdered(picture: FarmPicture, batchId: string): Promise<PlannedOfBatch> {
    const ordered = asOrdered(picture, batchId);
    const key = `${batchId} ${signatureOf(ordered)}`;
    return this.ordered.of(key, () =>
      this.work.run('planAsOrdered', { picture: ordered, batchId }),
    );
  }

  /** What a fact changed in the plan of its batch. */
  async changedBy(farmId: string, factId: string): Promise<ChangedByFact> {
    const { picture } = await this.pictures.of(farmId);
    const fact = await this.told.findOne(farmId, factId);
    const facts = await this.told.factsAbout(farmId, fact.about, MOVES_BATCH);
    return this.work.run('changedByFact', { picture, fact, facts });
  }

  /** @throws FieldError when it is no year that a farm can have a record of */
  async ofYear(farmId: string, asked: string): Promise<CountedYear> {
    const year = yearOf(asked);
    const saved = await this.pictures.of(farmId);
    const { farm } = saved.picture;
    const facts = [
      ...(await this.told.factsOfYear(farmId, year, COUNTED)),
      // Those of the year before may run on, and they are few.
      ...(await this.told.factsOf(farmId, 'treated')),
    ];
    const counts = yearCounts(year, facts, farm.currency);
    const usualRain = counts.rain && usualRainMm(counts.rain, saved.picture.climate);
    const limits = againstLimits(counts, farm.yearLimits);
    const usual = usualRain === undefined ? {} : { usualRainMm: usualRain };
    return { ...counts, ...usual, limits: await this.withPlanned(limits, saved, year) };
  }

  /** Birds that the plans of this year still come to, beside those that were told. */
  private async withPlanned(
    limits: readonly AgainstLimit[],
    { key, picture }: SavedPicture,
    year: number,
  ): Promise<AgainstLimit[]> {
    const isAsked = limits.some(({ of }) => of === 'birdsProcessed');
    if (!isAsked || year < Number(picture.today.slice(0, 4))) return [...limits];
    const planned = await this.planned.of(`${key}/${year}`, () =>
      this.work.run('stillToProcess', { picture, year }),
    );
    return limits.map((each) => (each.of === 'birdsProcessed' ? { ...each, planned } : each));
  }

  /** What each paddock carried in a calendar year. */
  async ofPaddocks(farmId: string, asked: string): Promise<PaddockYear[]> {
    const year = yearOf(asked);
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOf(farmId, 'herd-move', 'paddock-mown');
    return paddockYears(picture, this.tables.tables, { year, facts });
  }

  /** The same of every year there is a record of, from one reading of it. */
  async ofPaddocksByYear(farmId: string): Promise<PaddocksOfYear[]> {
    const { picture } = await this.pictures.of(farmId);
    const facts = await this.told.factsOf(farmId, 'herd-move', 'paddock-mown');
    return paddocksByYear(picture, this.tables.tables, facts);
  }

  /** How the batches of each breed went, years side by side. */
  async ofBreeds(farmId: string): Promise<BreedSum[]> {
    return byBreed(await this.ofBatches(farmId));
  }

  private factsOf(farmId: string): Promise<ToldFact[]> {
    return this.told.factsOf(farmId, ...OF_BATCHES);
  }
}

/** The last batches of a breed: what was long ago was raised otherwise. */
const LEARNED_FROM = 6;

function unlessUnplannable(error: unknown): undefined {
  if (!(error instanceof FieldError)) throw error;
}

function refuseUnknownStrain(given: string, { strains }: Tables): void {
  if (strains.some(({ id }) => id === given)) return;
  throw new FieldError([
    {
      ...{ field: 'strainId', code: 'not-allowed', given },
      allowed: strains.map(({ id }) => id),
      fix: 'Name a breed or cross of the table.',
    },
  ]);
}

/** Plans of batches as they were ordered that are kept: some a screen of a farm, each 100 kB. */
const PLANS_KEPT = 40;

export const OF_BATCHES = [
  ...(['arrived', 'died', 'processed', 'gone', 'feed-opened'] as const),
  ...(['bought', 'eggs-counted', 'work-progress'] as const),
] as const satisfies readonly ToldKind[];

const COUNTED = [
  ...(['arrived', 'died', 'processed', 'gone', 'eggs-counted'] as const),
  ...(['eggs-gone', 'milked', 'calved', 'cattle-left', 'bought', 'rained'] as const),
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
