import { Body, Controller, Get, HttpCode, Param, Post, Put, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { pastureChoiceFields } from '../../shared/farm/pasture-choices.js';
import { Answers, AnswersList } from '../common/answers.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { EXPLANATION, PASTURE_PLAN } from '../common/plan-answers.js';
import { PastureChoicesDto } from '../farms/pasture-choices.dto.js';
import { sendJson } from '../common/send-json.js';
import { PastureService } from './pasture.service.js';

@ApiTags('pasture')
@Controller()
export class PastureController {
  constructor(private readonly pasture: PastureService) {}

  /** Plans the pasture of a farm that is sent whole, without saving anything. */
  @Answers(PASTURE_PLAN)
  @Post('pasture/preview')
  @HttpCode(200)
  preview(@Body() document: FarmDocumentDto): Promise<PasturePlan> {
    return this.pasture.preview(document);
  }

  /** Opens every number of a pasture's plan, in the farm's units. */
  @AnswersList(EXPLANATION)
  @Post('pasture/explain')
  @HttpCode(200)
  async explain(@Body() document: FarmDocumentDto, @Res() response: Response): Promise<void> {
    sendJson(response, await this.pasture.explanations(document));
  }

  @Answers(PASTURE_PLAN)
  @Get('farms/:farmId/pasture/plan')
  planOf(@Param('farmId') farmId: string): Promise<PasturePlan> {
    return this.pasture.planOf(farmId);
  }

  @Answers(pastureChoiceFields)
  @Put('farms/:farmId/pasture/choices')
  @TakesVersion()
  choose(
    @Param('farmId') farmId: string,
    @Body() choices: PastureChoicesDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<PastureChoices> {
    return this.pasture.choose(farmId, choices, expected);
  }
}
