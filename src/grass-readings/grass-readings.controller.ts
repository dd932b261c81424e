import { Body, Controller, Delete, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiConflictResponse, ApiTags } from '@nestjs/swagger';
import { type GrassReading, savedReadingFields } from '../../shared/farm/paddock.js';
import { WalkDto } from './grass-reading.dto.js';
import { GrassReadingsService } from './grass-readings.service.js';
import { AnswersList } from '../common/answers.js';

@ApiTags('grass readings')
@Controller('farms/:farmId/grass-readings')
export class GrassReadingsController {
  constructor(private readonly readings: GrassReadingsService) {}

  @AnswersList(savedReadingFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<GrassReading[]> {
    return this.readings.findAll(farmId);
  }

  /** Keeps the heights of one walk over the paddocks. */
  @AnswersList(savedReadingFields)
  @Post()
  walk(@Param('farmId') farmId: string, @Body() dto: WalkDto): Promise<GrassReading[]> {
    return this.readings.walk(farmId, dto);
  }

  @Delete(':id')
  @ApiConflictResponse({
    description:
      'It was read there again on that day; nothing is taken back. `current` is the reading that holds now.',
  })
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @Param('id') id: string): Promise<void> {
    return this.readings.remove(farmId, id);
  }
}
