import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiBody, ApiExtraModels, ApiTags, getSchemaPath } from '@nestjs/swagger';
import type { Facility } from '../../shared/farm/facility.js';
import type { Saved } from '../../shared/farm/saved.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { FacilitiesService } from './facilities.service.js';
import { FACILITY_DTOS } from './facility.dto.js';

const ANY_FACILITY = {
  schema: { oneOf: FACILITY_DTOS.map((dto) => ({ $ref: getSchemaPath(dto) })) },
};

@ApiTags('facilities')
@ApiExtraModels(...FACILITY_DTOS)
@Controller('farms/:farmId/facilities')
export class FacilitiesController {
  constructor(private readonly facilities: FacilitiesService) {}

  @Post()
  @ApiBody(ANY_FACILITY)
  create(@Param('farmId') farmId: string, @Body() body: object): Promise<Saved<Facility>> {
    return this.facilities.create(farmId, body);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Facility>[]> {
    return this.facilities.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Facility>> {
    return this.facilities.findOne(farmId, id);
  }

  @Put(':id')
  @TakesVersion()
  @ApiBody(ANY_FACILITY)
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() body: object,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Facility>> {
    return this.facilities.update(farmId, id, body, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.facilities.remove(farmId, id, expected);
  }
}
