import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import { JoinDto, PaddockDto, SplitDto } from './paddock.dto.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { PaddocksService, type FoundInGeoJson, type Reshaped } from './paddocks.service.js';

@ApiTags('paddocks')
@Controller('farms/:farmId/paddocks')
export class PaddocksController {
  constructor(private readonly paddocks: PaddocksService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: PaddockDto): Promise<Saved<Paddock>> {
    return this.paddocks.create(farmId, dto);
  }

  /** Adds a paddock for every polygon of a GeoJSON document. */
  @Post('geojson')
  importGeoJson(
    @Param('farmId') farmId: string,
    @Body() document: object,
  ): Promise<Saved<Paddock>[]> {
    return this.paddocks.importGeoJson(farmId, document);
  }

  /** What an import of the same document would add, saving nothing. */
  @Post('geojson/preview')
  @HttpCode(200)
  findInGeoJson(
    @Param('farmId') farmId: string,
    @Body() document: object,
  ): Promise<FoundInGeoJson> {
    return this.paddocks.findInGeoJson(farmId, document);
  }

  /** Makes one paddock of several. */
  @Post('join')
  join(@Param('farmId') farmId: string, @Body() dto: JoinDto): Promise<Reshaped> {
    return this.paddocks.join(farmId, dto.ids, dto.name);
  }

  /** Cuts a paddock into strips of equal or given shares. */
  @Post(':id/split')
  split(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: SplitDto,
  ): Promise<Reshaped[]> {
    return this.paddocks.split(farmId, id, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Paddock>[]> {
    return this.paddocks.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Paddock>> {
    return this.paddocks.findOne(farmId, id);
  }

  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: PaddockDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Paddock>> {
    return this.paddocks.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.paddocks.remove(farmId, id, expected);
  }
}
