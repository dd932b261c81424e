import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { OwnJob } from '../../shared/farm/job.js';
import { JobDto } from './job.dto.js';
import { JobsService } from './jobs.service.js';

@ApiTags('jobs')
@Controller('farms/:farmId/jobs')
export class JobsController {
  constructor(private readonly jobs: JobsService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: JobDto): Promise<OwnJob> {
    return this.jobs.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<OwnJob[]> {
    return this.jobs.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<OwnJob> {
    return this.jobs.findOne(farmId, id);
  }

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
