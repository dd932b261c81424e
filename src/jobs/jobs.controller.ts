import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { KeptJob } from '../../shared/farm/resting-jobs.js';
import type { Saved } from '../../shared/farm/saved.js';
import { JobDto, TakenSetDto } from './job.dto.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { JobsService } from './jobs.service.js';

@ApiTags('jobs')
@Controller('farms/:farmId/jobs')
export class JobsController {
  constructor(private readonly jobs: JobsService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: JobDto): Promise<Saved<KeptJob>> {
    return this.jobs.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<KeptJob>[]> {
    return this.jobs.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<KeptJob>> {
    return this.jobs.findOne(farmId, id);
  }

  /** Takes a ready-made set: its jobs are made for this year and are then the household's own. */
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

  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: JobDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<KeptJob>> {
    return this.jobs.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.jobs.remove(farmId, id, expected);
  }
}
