import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { FarmDto, type FarmView } from './farm.dto.js';
import { FarmsService } from './farms.service.js';

@ApiTags('farms')
@Controller('farms')
export class FarmsController {
  constructor(private readonly farms: FarmsService) {}

  @Post()
  create(@Body() dto: FarmDto): Promise<FarmView> {
    return this.farms.create(dto);
  }

  /** Loads the invented sample farm. */
  @Post('sample')
  createSample(): Promise<FarmView> {
    return this.farms.createSample();
  }

  @Get()
  findAll(): Promise<FarmView[]> {
    return this.farms.findAll();
  }

  @Get(':farmId')
  findOne(@Param('farmId') farmId: string): Promise<FarmView> {
    return this.farms.findOne(farmId);
  }

  @Put(':farmId')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Body() dto: FarmDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<FarmView> {
    return this.farms.update(farmId, dto, expected);
  }

  @Delete(':farmId')
  @TakesVersion()
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @ExpectedVersion() expected: Expected): Promise<void> {
    return this.farms.remove(farmId, expected);
  }
}
