import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { WorkService } from './work.service.js';
import { Answers } from '../common/answers.js';
import { WORK_PLAN } from '../common/plan-answers.js';

@ApiTags('plans')
@Controller('plans/work')
export class HouseholdController {
  constructor(private readonly work: WorkService) {}

  /** Plans the work of a household that is sent whole. Nothing is saved. */
  @Answers(WORK_PLAN)
  @Post()
  @HttpCode(200)
  preview(@Body() document: FarmDocumentDto): Promise<WorkPlan> {
    return this.work.preview(document);
  }
}
