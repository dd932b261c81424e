import { Body, Controller, Get, HttpCode, Param, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { DatedToday } from '../../shared/plan/today/today.js';
import { Answers } from '../common/answers.js';
import { TODAY } from '../common/plan-answers.js';
import { ChoreTickDto, choreTickFields } from './today.dto.js';
import { TodayService } from './today.service.js';

@ApiTags('work')
@Controller('farms/:farmId/today')
export class TodayController {
  constructor(private readonly today: TodayService) {}

  /** All that is asked on the day it is: weather, ground, animals, work, chores, what is ahead. */
  @Answers(TODAY)
  @Get()
  todayOf(@Param('farmId') farmId: string): Promise<DatedToday> {
    return this.today.todayOf(farmId);
  }

  /** Ticks a chore of today off, or opens it again. */
  @Answers(choreTickFields)
  @Put('chores')
  @HttpCode(200)
  tick(@Param('farmId') farmId: string, @Body() dto: ChoreTickDto): Promise<ChoreTickDto> {
    return this.today.tick(farmId, dto);
  }
}
