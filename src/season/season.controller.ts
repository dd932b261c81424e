import { Body, Controller, Get, HttpCode, Param, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { WorkMark } from '../../shared/farm/job.js';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { WorkMarkDto } from './season.dto.js';
import { SeasonService } from './season.service.js';

@ApiTags('work')
@Controller('farms/:farmId/work')
export class SeasonController {
  constructor(private readonly season: SeasonService) {}

  /** The household's work, fitted into its hours and the days that suit it. */
  @Get()
  planOf(@Param('farmId') farmId: string): Promise<SeasonPlan> {
    return this.season.planOf(farmId);
  }

  /** Ticks work off, puts it off, or opens it again. */
  @Put('mark')
  @HttpCode(200)
  mark(@Param('farmId') farmId: string, @Body() dto: WorkMarkDto): Promise<WorkMark> {
    return this.season.mark(farmId, dto);
  }
}
