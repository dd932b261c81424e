import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { YearPlan } from '../../shared/plan/year/year-plan.js';
import { Answers } from '../common/answers.js';
import { YEAR_PLAN } from '../common/plan-answers.js';
import { YearService } from './year.service.js';

@ApiTags('work')
@Controller('farms/:farmId/year')
export class YearController {
  constructor(private readonly year: YearService) {}

  /** Thirteen months of a farm: batches, herds, jobs, absences, weather and hours on one strip. */
  @Answers(YEAR_PLAN)
  @Get()
  of(@Param('farmId') farmId: string): Promise<YearPlan> {
    return this.year.of(farmId);
  }
}
