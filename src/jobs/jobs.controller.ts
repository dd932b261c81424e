import { Body, Controller, Delete, HttpCode, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { jobFields } from '../../shared/farm/job.js';
import type { KeptJob } from '../../shared/farm/resting-jobs.js';
import type { Saved } from '../../shared/farm/saved.js';
import { JobDto, TakenSetDto } from './job.dto.js';
import { rowsController } from '../rows/rows-controller.js';
import { JobsService } from './jobs.service.js';
import { AnswersList } from '../common/answers.js';

@ApiTags('jobs')
@Controller('farms/:farmId/jobs')
export class JobsController extends rowsController(jobFields, JobDto) {
  constructor(private readonly jobs: JobsService) {
    super(jobs);
  }

  /** Takes a ready-made set: its jobs are made for this year and are then the household's own. */
  @AnswersList(jobFields)
  @Post('sets/:setId')
  takeSet(
    @Param('farmId') farmId: string,
    @Param('setId') setId: string,
    @Body() dto: TakenSetDto,
  ): Promise<Saved<KeptJob>[]> {
    return this.jobs.takeSet(farmId, setId, dto);
  }

  /** Leaves a set: every job that came with it goes. */
  @Delete('sets/:setId')
  @HttpCode(204)
  leaveSet(@Param('farmId') farmId: string, @Param('setId') setId: string): Promise<void> {
    return this.jobs.leaveSet(farmId, setId);
  }
}
