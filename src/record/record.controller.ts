import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import type { BreedSum } from '../../shared/plan/record/by-breed.js';
import type { ChangedByFact } from '../../shared/plan/record/changed-by-fact.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { LearnedFromBatches } from '../../shared/plan/record/own-batches.js';
import type { PaddocksOfYear, PaddockYear } from '../../shared/plan/record/paddock-year.js';
import type { CountedYear } from '../../shared/plan/record/year-limits.js';
import { Answers, AnswersList } from '../common/answers.js';
import { checkDto } from '../common/check-dto.js';
import {
  BREED_SUM,
  CHANGED_BY_FACT,
  HOW_IT_WENT,
  LEARNED,
  PADDOCK_YEAR,
  PADDOCKS_OF_YEAR,
  YEAR_COUNTS,
} from '../common/plan-answers.js';
import { LearnedDto } from './learned.dto.js';
import { RecordService } from './record.service.js';

@ApiTags('what happened')
@Controller('farms/:farmId/record')
export class RecordController {
  constructor(private readonly record: RecordService) {}

  /** Every batch that has come, planned beside told, the newest first. */
  @AnswersList(HOW_IT_WENT)
  @Get('batches')
  ofBatches(@Param('farmId') farmId: string): Promise<HowItWent[]> {
    return this.record.ofBatches(farmId);
  }

  /** One batch, planned beside told. */
  @Answers(HOW_IT_WENT)
  @Get('batches/:batchId')
  ofBatch(@Param('farmId') farmId: string, @Param('batchId') batchId: string): Promise<HowItWent> {
    return this.record.ofBatch(farmId, batchId);
  }

  /** What to plan another batch of a breed or cross with, by the farm's own that came. */
  @Answers(LEARNED)
  @Get('learned')
  @ApiQuery({ name: 'purpose', enum: ['meat', 'layers'] })
  @ApiQuery({ name: 'strainId' })
  learned(
    @Param('farmId') farmId: string,
    @Query() query: Record<string, unknown>,
  ): Promise<LearnedFromBatches> {
    return this.record.learned(farmId, checkDto(LearnedDto, query));
  }

  /** Batches that are over, added up by breed, years side by side. */
  @AnswersList(BREED_SUM)
  @Get('breeds')
  ofBreeds(@Param('farmId') farmId: string): Promise<BreedSum[]> {
    return this.record.ofBreeds(farmId);
  }

  /** What each paddock carried, years side by side. */
  @AnswersList(PADDOCKS_OF_YEAR)
  @Get('paddocks')
  ofPaddocksByYear(@Param('farmId') farmId: string): Promise<PaddocksOfYear[]> {
    return this.record.ofPaddocksByYear(farmId);
  }

  /** What a told fact changed in the plan of its batch, in words: only what matters. */
  @Answers(CHANGED_BY_FACT)
  @Get('changed/:factId')
  changedBy(
    @Param('farmId') farmId: string,
    @Param('factId') factId: string,
  ): Promise<ChangedByFact> {
    return this.record.changedBy(farmId, factId);
  }

  /** What each paddock carried in a calendar year, by moves and mowing that were told. */
  @AnswersList(PADDOCK_YEAR)
  @Get('years/:year/paddocks')
  ofPaddocks(@Param('farmId') farmId: string, @Param('year') year: string): Promise<PaddockYear[]> {
    return this.record.ofPaddocks(farmId, year);
  }

  /** What was told of a calendar year, counted, and held against the limits of the place. */
  @Answers(YEAR_COUNTS)
  @Get('years/:year')
  ofYear(@Param('farmId') farmId: string, @Param('year') year: string): Promise<CountedYear> {
    return this.record.ofYear(farmId, year);
  }
}
