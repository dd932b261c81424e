import { Body, Controller, Get, HttpCode, Param, Post, Put, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { type GroundCheck, toldGroundFields } from '../../shared/farm/ground-check.js';
import { type Progress, toldProgressFields } from '../../shared/farm/job.js';
import type { WorkComparison } from '../../shared/plan/work/compare-plans.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import { WorkIfService } from './work-if.service.js';
import { ArrivalMoveDto, GroundLookDto, ProgressDto, SuddenlyAwayDto } from './work.dto.js';
import { WorkService } from './work.service.js';
import { Answers } from '../common/answers.js';
import { sendJson } from '../common/send-json.js';
import {
  WORK_CHANCES,
  WORK_CHANCES_PROGRESS,
  WORK_COMPARISON,
  WORK_PLAN,
} from '../common/plan-answers.js';

@ApiTags('work')
@Controller('farms/:farmId/work')
export class WorkController {
  constructor(
    private readonly work: WorkService,
    private readonly ifChanged: WorkIfService,
  ) {}

  /** The household's work, fitted into its hours and the days that suit it. */
  @Answers(WORK_PLAN)
  @Get()
  async planOf(@Param('farmId') farmId: string, @Res() response: Response): Promise<void> {
    sendJson(response, await this.work.planBytesOf(farmId));
  }

  /**
   * Chances of every job over many years of weather, its days chosen anew every week; what work that
   * is unlikely to get done lacks, and what would raise its odds; frost dates and workable days.
   */
  @Answers(WORK_CHANCES)
  @Get('outlook')
  outlookOf(@Param('farmId') farmId: string): Promise<WorkOutlook> {
    return this.work.outlookOf(farmId);
  }

  /** How far chances are that are being worked out: the share that is played, 0 to 1. */
  @Answers(WORK_CHANCES_PROGRESS)
  @Get('outlook/progress')
  outlookProgressOf(@Param('farmId') farmId: string): Promise<{ played: number }> {
    return this.work.outlookProgressOf(farmId);
  }

  /** What another arrival date would free or break. */
  @Answers(WORK_COMPARISON)
  @Post('if-arrival-moves')
  @HttpCode(200)
  ifArrivalMoves(
    @Param('farmId') farmId: string,
    @Body() dto: ArrivalMoveDto,
  ): Promise<WorkComparison> {
    return this.ifChanged.ifArrivalMoves(farmId, dto);
  }

  /** What it would move, and what of the animals has nobody, when people are away from today on. */
  @Answers(WORK_COMPARISON)
  @Post('if-away')
  @HttpCode(200)
  ifAway(@Param('farmId') farmId: string, @Body() dto: SuddenlyAwayDto): Promise<WorkComparison> {
    return this.ifChanged.ifAway(farmId, dto);
  }

  /**
   * Ticks work off, puts it off, strikes it out, gives it other hours or days, or takes that back. A
   * trip for feed that is ticked off brought what was planned, unless what was bought on it is told
   * about its key before.
   */
  @Answers(toldProgressFields)
  @Put('progress')
  @HttpCode(200)
  progress(@Param('farmId') farmId: string, @Body() dto: ProgressDto): Promise<Progress> {
    return this.work.tellProgress(farmId, dto);
  }

  /** Writes down what was found when the ground was looked at. */
  @Answers(toldGroundFields)
  @Put('ground')
  @HttpCode(200)
  look(@Param('farmId') farmId: string, @Body() dto: GroundLookDto): Promise<Partial<GroundCheck>> {
    return this.work.look(farmId, dto);
  }
}
