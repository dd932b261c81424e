import { Body, Controller, HttpCode, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { FarmDocumentDto } from '../documents/farm-document.dto.js';
import { WorkService } from './work.service.js';
import { Answers } from '../common/answers.js';
import { sendJson } from '../common/send-json.js';
import { WORK_PLAN } from '../common/plan-answers.js';

@ApiTags('plans')
@Controller('plans/work')
export class HouseholdController {
  constructor(private readonly work: WorkService) {}

  /** Plans the work of a household that is sent whole. Nothing is saved. */
  @Answers(WORK_PLAN)
  @Post()
  @HttpCode(200)
  async preview(@Body() document: FarmDocumentDto, @Res() response: Response): Promise<void> {
    sendJson(response, await this.work.preview(document));
  }
}
