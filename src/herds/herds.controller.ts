import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Herd } from '../../shared/farm/herd.js';
import type { Saved } from '../../shared/farm/saved.js';
import { HerdDto, MovedDto } from './herd.dto.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { HerdsService } from './herds.service.js';

@ApiTags('herds')
@Controller('farms/:farmId/herds')
export class HerdsController {
  constructor(private readonly herds: HerdsService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: HerdDto): Promise<Saved<Herd>> {
    return this.herds.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Herd>[]> {
    return this.herds.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Herd>> {
    return this.herds.findOne(farmId, id);
  }

  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: HerdDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Herd>> {
    return this.herds.update(farmId, id, dto, expected);
  }

  /** Notes where a herd really went. */
  @Post(':id/moved')
  @HttpCode(200)
  moved(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: MovedDto,
  ): Promise<Saved<Herd>> {
    return this.herds.moved(farmId, id, dto);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.herds.remove(farmId, id, expected);
  }
}
