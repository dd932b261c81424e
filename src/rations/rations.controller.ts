import { Body, Controller, HttpCode, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Ration } from '../../shared/ration/ration.js';
import { Answers } from '../common/answers.js';
import { RATION } from '../common/plan-answers.js';
import { RationAskedDto } from './ration.dto.js';
import { RationsService } from './rations.service.js';

@ApiTags('feed')
@Controller('farms/:farmId/rations')
export class RationsController {
  constructor(private readonly rations: RationsService) {}

  /** The mix that costs least and feeds birds of one age what they need, or why there is none. */
  @Answers(RATION)
  @Post()
  @HttpCode(200)
  rationOf(@Param('farmId') farmId: string, @Body() asked: RationAskedDto): Promise<Ration> {
    return this.rations.rationOf(farmId, asked);
  }
}
