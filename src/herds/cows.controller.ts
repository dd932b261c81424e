import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { cowFields, type Cow } from '../../shared/farm/cow.js';
import type { Saved } from '../../shared/farm/saved.js';
import { Answers, AnswersList } from '../common/answers.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { CowDto } from './cow.dto.js';
import { CowsService } from './cows.service.js';

@ApiTags('cows')
@Controller('farms/:farmId/cows')
export class CowsController {
  constructor(private readonly cows: CowsService) {}

  @Answers(cowFields)
  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: CowDto): Promise<Saved<Cow>> {
    return this.cows.create(farmId, dto);
  }

  @AnswersList(cowFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Cow>[]> {
    return this.cows.findAll(farmId);
  }

  @Answers(cowFields)
  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Cow>> {
    return this.cows.findOne(farmId, id);
  }

  @Answers(cowFields)
  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: CowDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Cow>> {
    return this.cows.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.cows.remove(farmId, id, expected);
  }
}
