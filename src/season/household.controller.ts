import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { SeasonService } from './season.service.js';
import { Answers } from '../common/answers.js';
import { WORK_PLAN } from '../common/plan-answers.js';

@ApiTags('plans')
@Controller('plans/work')
export class HouseholdController {
  constructor(private readonly season: SeasonService) {}

  /** Plans the work of a household that is sent whole. Nothing is saved. */
  @Answers(WORK_PLAN)
  @Post()
  @HttpCode(200)
  preview(@Body() document: FarmDocumentDto): Promise<SeasonPlan> {
    return this.season.preview(document);
  }
}
