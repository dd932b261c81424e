import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { jobFields, type OwnJob } from '../../shared/farm/job.js';
import { JobDto, TakenSetDto } from './job.dto.js';
import { JobsService } from './jobs.service.js';
import { Answers, AnswersList } from '../common/answers.js';

@ApiTags('jobs')
@Controller('farms/:farmId/jobs')
export class JobsController {
  constructor(private readonly jobs: JobsService) {}

  @Answers(jobFields)
  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: JobDto): Promise<OwnJob> {
    return this.jobs.create(farmId, dto);
  }

  @AnswersList(jobFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<OwnJob[]> {
    return this.jobs.findAll(farmId);
  }

  @Answers(jobFields)
  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<OwnJob> {
    return this.jobs.findOne(farmId, id);
  }

  /** Takes a ready-made set: its jobs are made for this year and are then the household's own. */
  @AnswersList(jobFields)
  @Post('sets/:setId')
  takeSet(
    @Param('farmId') farmId: string,
    @Param('setId') setId: string,
    @Body() dto: TakenSetDto,
  ): Promise<OwnJob[]> {
    return this.jobs.takeSet(farmId, setId, dto);
  }

  /** Leaves a set: every job that came with it goes. */
  @Delete('sets/:setId')
  @HttpCode(204)
  leaveSet(@Param('farmId') farmId: string, @Param('setId') setId: string): Promise<void> {
    return this.jobs.leaveSet(farmId, setId);
  }

  @Answers(jobFields)
  @Put(':id')
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: JobDto,
  ): Promise<OwnJob> {
    return this.jobs.update(farmId, id, dto);
  }

  @Delete(':id')
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @Param('id') id: string): Promise<void> {
    return this.jobs.remove(farmId, id);
  }
}
