import { Body, Controller, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Explanation } from '../../shared/explain/explanation.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import type { PastureChoices } from '../../shared/plan/pasture/pasture-request.js';
import { PastureChoicesDto, PastureOrderDto } from './pasture.dto.js';
import { PastureService, type PastureOnFarm } from './pasture.service.js';
import { pastureChoiceFields } from '../../shared/farm/pasture-choices.js';
import { Answers, AnswersList } from '../common/answers.js';
import { EXPLANATION, PASTURE_ON_FARM, PASTURE_PLAN } from '../plans/plan-answers.js';

@ApiTags('pasture')
@Controller()
export class PastureController {
  constructor(private readonly pasture: PastureService) {}

  /** Plans a pasture without saving anything. */
  @Answers(PASTURE_PLAN)
  @Post('pasture/preview')
  @HttpCode(200)
  preview(@Body() order: PastureOrderDto): Promise<PasturePlan> {
    return this.pasture.preview(order);
  }

  /** Opens every number of a pasture's plan, in the farm's units. */
  @AnswersList(EXPLANATION)
  @Post('pasture/explain')
  @HttpCode(200)
  explain(@Body() order: PastureOrderDto): Promise<Explanation[]> {
    return this.pasture.explanations(order);
  }

  @Answers(PASTURE_PLAN)
  @Get('farms/:farmId/pasture/plan')
  planOf(@Param('farmId') farmId: string): Promise<PasturePlan> {
    return this.pasture.planOf(farmId);
  }

  /** Everything this farm's pasture plan is made from, for a page that plans in the browser. */
  @Answers(PASTURE_ON_FARM)
  @Get('farms/:farmId/pasture')
  onFarm(@Param('farmId') farmId: string): Promise<PastureOnFarm> {
    return this.pasture.onFarm(farmId);
  }

  @Answers(pastureChoiceFields)
  @Put('farms/:farmId/pasture/choices')
  choose(
    @Param('farmId') farmId: string,
    @Body() choices: PastureChoicesDto,
  ): Promise<PastureChoices> {
    return this.pasture.choose(farmId, choices);
  }
}
