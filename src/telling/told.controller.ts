import { Body, Controller, Delete, Get, HttpCode, Param, Post, Query } from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../shared/farm/told-kinds.js';
import { Answers, AnswersList } from '../common/answers.js';
import { TOLD_FACT, TOLD_PAGE } from '../common/plan-answers.js';
import { checkDto } from '../common/check-dto.js';
import { withNumbers } from '../common/page.dto.js';
import { FarmsService } from '../farms/farms.service.js';
import { TellDto, ToldQueryDto } from '../told/told.dto.js';
import type { ToldPage } from '../told/facts-of-farm.js';
import { ToldService } from '../told/told.service.js';
import { TellingService } from './telling.service.js';

type Asked = Readonly<Record<string, unknown>>;

@ApiTags('what happened')
@Controller('farms/:farmId/told')
export class ToldController {
  constructor(
    private readonly telling: TellingService,
    private readonly told: ToldService,
    private readonly farms: FarmsService,
  ) {}

  /**
   * Tells what happened, all of it or nothing. Told again under the same key it stays one fact. A move
   * of a herd that was taken to have moved before it tells those moves with it.
   */
  @AnswersList(TOLD_FACT)
  @Post()
  tell(@Param('farmId') farmId: string, @Body() { facts }: TellDto): Promise<ToldFact[]> {
    return this.telling.tell(farmId, facts);
  }

  /** What was told, the newest first; `total` says how many there are beyond these. */
  @Answers(TOLD_PAGE)
  @Get()
  @ApiQuery({ name: 'kind', required: false, enum: Object.keys(TOLD_KINDS) })
  @ApiQuery({ name: 'about', required: false })
  @ApiQuery({ name: 'from', required: false, description: 'First day.' })
  @ApiQuery({
    name: 'history',
    required: false,
    type: Boolean,
    description: 'With facts that were taken back or replaced.',
  })
  @ApiQuery({
    name: 'ticks',
    required: false,
    type: Boolean,
    description: 'With chores ticked off and alarms seen; true when left out.',
  })
  @ApiQuery({ name: 'skip', required: false, type: Number })
  @ApiQuery({ name: 'take', required: false, type: Number, description: '200 when left out.' })
  async find(@Param('farmId') farmId: string, @Query() query: Asked): Promise<ToldPage> {
    await this.farms.findOne(farmId);
    return this.told.find(farmId, checkDto(ToldQueryDto, typed(query)));
  }

  /** Takes a fact back: it is kept as history, and what it had replaced holds again. */
  @Delete(':id')
  @HttpCode(204)
  takeBack(@Param('farmId') farmId: string, @Param('id') id: string): Promise<void> {
    return this.told.takeBack(farmId, id);
  }
}

/** A query holds text only: yes and no are read from it. */
function typed({ history, ticks, ...rest }: Asked): object {
  return { ...withNumbers(rest), ...yesNo('history', history), ...yesNo('ticks', ticks) };
}

const yesNo = (name: string, given: unknown): object =>
  given === undefined
    ? {}
    : { [name]: given === 'true' ? true : given === 'false' ? false : given };
