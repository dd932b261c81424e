import { Body, Controller, HttpCode, Param, Post } from '@nestjs/common';
import { ApiBody, ApiExtraModels, ApiTags, getSchemaPath } from '@nestjs/swagger';
import { paddockFields, reshapedFields, type Paddock } from '../../shared/farm/paddock.js';
import type { Saved } from '../../shared/farm/saved.js';
import { GroundDto, JoinDto, PaddockDto, SplitDto } from './paddock.dto.js';
import { rowsController } from '../rows/rows-controller.js';
import { PaddocksService, type FoundInGeoJson, type Reshaped } from './paddocks.service.js';
import { Answers, AnswersList, named } from '../common/answers.js';

const FOUND_IN_GEOJSON = named('FoundInGeoJson', 'Paddocks that an import would add.');
const GEOJSON = {
  schema: {
    description:
      'A GeoJSON document (RFC 7946); what it does not say of the ground may stand beside',
    allOf: [{ type: 'object', additionalProperties: true }, { $ref: getSchemaPath(GroundDto) }],
  },
};

@ApiTags('paddocks')
@ApiExtraModels(GroundDto)
@Controller('farms/:farmId/paddocks')
export class PaddocksController extends rowsController(paddockFields, PaddockDto) {
  constructor(private readonly paddocks: PaddocksService) {
    super(paddocks);
  }

  /** Adds a paddock for every polygon of a GeoJSON document. */
  @AnswersList(paddockFields)
  @Post('geojson')
  @ApiBody(GEOJSON)
  importGeoJson(
    @Param('farmId') farmId: string,
    @Body() document: object,
  ): Promise<Saved<Paddock>[]> {
    return this.paddocks.importGeoJson(farmId, document);
  }

  /** What an import of the same document would add, saving nothing. */
  @Answers(FOUND_IN_GEOJSON)
  @Post('geojson/preview')
  @ApiBody(GEOJSON)
  @HttpCode(200)
  findInGeoJson(
    @Param('farmId') farmId: string,
    @Body() document: object,
  ): Promise<FoundInGeoJson> {
    return this.paddocks.findInGeoJson(farmId, document);
  }

  /** Makes one paddock of several. */
  @Answers(reshapedFields)
  @Post('join')
  join(@Param('farmId') farmId: string, @Body() dto: JoinDto): Promise<Reshaped> {
    return this.paddocks.join(farmId, dto.ids, dto.name);
  }

  /** Cuts a paddock into strips of equal or given shares. */
  @AnswersList(reshapedFields)
  @Post(':id/split')
  split(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: SplitDto,
  ): Promise<Reshaped[]> {
    return this.paddocks.split(farmId, id, dto);
  }
}
