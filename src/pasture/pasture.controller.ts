import { Body, Controller, Get, Header, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { PastureChoices } from '../../shared/farm/pasture-choices.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { FarmDocumentDto } from '../picture/farm-document.dto.js';
import { PastureChoicesDto } from '../farms/pasture-choices.dto.js';
import { PastureService } from './pasture.service.js';

@ApiTags('pasture')
@Controller()
export class PastureController {
  constructor(private readonly pasture: PastureService) {}

  /** Plans the pasture of a farm that is sent whole, without saving anything. */
  @Post('pasture/preview')
  @HttpCode(200)
  preview(@Body() document: FarmDocumentDto): Promise<PasturePlan> {
    return this.pasture.preview(document);
  }

  /** Opens every number of a pasture's plan, in the farm's units. */
  @Post('pasture/explain')
  @HttpCode(200)
  @Header('Content-Type', 'application/json; charset=utf-8')
  explain(@Body() document: FarmDocumentDto): Promise<string> {
    return this.pasture.explanations(document);
  }

  @Get('farms/:farmId/pasture/plan')
  planOf(@Param('farmId') farmId: string): Promise<PasturePlan> {
    return this.pasture.planOf(farmId);
  }

  @Put('farms/:farmId/pasture/choices')
  choose(
    @Param('farmId') farmId: string,
    @Body() choices: PastureChoicesDto,
  ): Promise<PastureChoices> {
    return this.pasture.choose(farmId, choices);
  }
}
