import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { NextYear } from '../../shared/plan/record/next-year.js';
import { Answers } from '../common/answers.js';
import { BEGUN_YEAR, NEXT_YEAR, YEAR_TAKEN_OUT } from '../common/plan-answers.js';
import { NextYearDto } from './next-year.dto.js';
import { TakeOutYearDto } from './take-out-year.dto.js';
import { NextYearService, type BegunYear, type YearTakenOut } from './next-year.service.js';

@ApiTags('what happened')
@Controller('farms/:farmId/next-year')
export class NextYearController {
  constructor(private readonly nextYear: NextYearService) {}

  /** Batches and jobs of a year as they would come again in the next, by what the farm learned. */
  @Answers(NEXT_YEAR)
  @Get(':year')
  of(@Param('farmId') farmId: string, @Param('year') year: string): Promise<NextYear> {
    return this.nextYear.of(farmId, year);
  }

  /** Makes those that are named anew, a year later: all of them or none. */
  @Answers(BEGUN_YEAR)
  @Post()
  begin(@Param('farmId') farmId: string, @Body() asked: NextYearDto): Promise<BegunYear> {
    return this.nextYear.begin(farmId, asked);
  }

  /** Takes out what a year was begun with, in one write; what was changed since stays, and is named. */
  @Answers(YEAR_TAKEN_OUT)
  @Post('take-out')
  takeOut(@Param('farmId') farmId: string, @Body() begun: TakeOutYearDto): Promise<YearTakenOut> {
    return this.nextYear.takeOut(farmId, begun);
  }
}
