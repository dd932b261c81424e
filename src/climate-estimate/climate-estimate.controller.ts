import { Controller, Get, Query } from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import {
  estimateAnswerFields,
  NO_ESTIMATE,
  type EstimateAnswer,
} from '../../shared/farm/estimated-climate.js';
import { farmFields } from '../../shared/farm/farm.js';
import { row } from '../../shared/farm/field.js';
import { Answers } from '../common/answers.js';
import { checkDto } from '../common/check-dto.js';
import { dtoOf } from '../common/dto-of.js';
import { numbersIn } from '../common/numbers-in.js';
import { ClimateEstimateService } from './climate-estimate.service.js';

const { latitudeDeg, longitudeDeg, elevationM } = farmFields.fields;

class EstimatePlaceDto extends dtoOf(
  row('EstimatePlace', { latitudeDeg, longitudeDeg, elevationM }),
) {}

const PLACE_FIELDS = ['latitudeDeg', 'longitudeDeg', 'elevationM'];

@ApiTags('weather')
@Controller('climate-estimate')
export class ClimateEstimateController {
  constructor(private readonly estimates: ClimateEstimateService) {}

  /** A year's climate from coordinates and height alone, offline, with how far off it may be. */
  @Answers(estimateAnswerFields)
  @Get()
  @ApiQuery({ name: 'latitudeDeg', type: Number })
  @ApiQuery({ name: 'longitudeDeg', type: Number })
  @ApiQuery({ name: 'elevationM', type: Number })
  get(@Query() query: Record<string, unknown>): EstimateAnswer {
    const place = checkDto(EstimatePlaceDto, numbersIn(query, PLACE_FIELDS));
    const estimate = this.estimates.find(place);
    return estimate ? { estimate } : { because: NO_ESTIMATE };
  }
}
