import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { type Batch, batchFields } from '../../shared/farm/batch.js';
import { BatchesService } from './batches.service.js';
import { BatchDto } from './batch.dto.js';
import { Answers, AnswersList } from '../common/answers.js';

@ApiTags('batches')
@Controller('farms/:farmId/batches')
export class BatchesController {
  constructor(private readonly batches: BatchesService) {}

  @Answers(batchFields)
  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: BatchDto): Promise<Batch & { id: string }> {
    return this.batches.create(farmId, dto);
  }

  @AnswersList(batchFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<(Batch & { id: string })[]> {
    return this.batches.findAll(farmId);
  }

  @Answers(batchFields)
  @Get(':id')
  findOne(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
  ): Promise<Batch & { id: string }> {
    return this.batches.findOne(farmId, id);
  }

  @Answers(batchFields)
  @Put(':id')
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: BatchDto,
  ): Promise<Batch & { id: string }> {
    return this.batches.update(farmId, id, dto);
  }

  @Delete(':id')
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @Param('id') id: string): Promise<void> {
    return this.batches.remove(farmId, id);
  }
}
