import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { SeasonPlan } from '../../shared/plan/season/season-plan.js';
import { FarmDocumentDto } from '../picture/farm-document.dto.js';
import { SeasonService } from './season.service.js';

@ApiTags('plans')
@Controller('plans/work')
export class HouseholdController {
  constructor(private readonly season: SeasonService) {}

  /** Plans the work of a household that is sent whole. Nothing is saved. */
  @Post()
  @HttpCode(200)
  preview(@Body() document: FarmDocumentDto): Promise<SeasonPlan> {
    return this.season.preview(document);
  }
}
