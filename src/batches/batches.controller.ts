import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Batch } from '../../shared/farm/batch.js';
import type { Saved } from '../../shared/farm/saved.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { BatchesService } from './batches.service.js';
import { BatchDto } from './batch.dto.js';

@ApiTags('batches')
@Controller('farms/:farmId/batches')
export class BatchesController {
  constructor(private readonly batches: BatchesService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: BatchDto): Promise<Saved<Batch>> {
    return this.batches.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Batch>[]> {
    return this.batches.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Batch>> {
    return this.batches.findOne(farmId, id);
  }

  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: BatchDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Batch>> {
    return this.batches.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.batches.remove(farmId, id, expected);
  }
}
