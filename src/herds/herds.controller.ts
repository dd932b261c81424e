import { Body, Controller, HttpCode, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { herdFields, type Herd } from '../../shared/farm/herd.js';
import type { Saved } from '../../shared/farm/saved.js';
import { HerdDto, MovedDto } from './herd.dto.js';
import { rowsController } from '../rows/rows-controller.js';
import { HerdsService } from './herds.service.js';
import { Answers } from '../common/answers.js';

@ApiTags('herds')
@Controller('farms/:farmId/herds')
export class HerdsController extends rowsController(herdFields, HerdDto) {
  constructor(private readonly herds: HerdsService) {
    super(herds);
  }

  /** Notes where a herd really went. */
  @Answers(herdFields)
  @Post(':id/moved')
  @HttpCode(200)
  moved(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: MovedDto,
  ): Promise<Saved<Herd>> {
    return this.herds.moved(farmId, id, dto);
  }
}
