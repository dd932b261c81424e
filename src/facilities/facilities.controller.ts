import { Controller } from '@nestjs/common';
import { ApiExtraModels, ApiTags } from '@nestjs/swagger';
import { anyFacility } from '../../shared/farm/facility.js';
import { rowsController } from '../rows/rows-controller.js';
import { FacilitiesService } from './facilities.service.js';
import { FACILITY_DTOS } from './facility.dto.js';
import { sentNames } from '../common/dto-of.js';
import { schemaOf } from '../common/schema-of.js';

const ANY_FACILITY = { schema: schemaOf(anyFacility, sentNames) };

@ApiTags('facilities')
@ApiExtraModels(...FACILITY_DTOS)
@Controller('farms/:farmId/facilities')
export class FacilitiesController extends rowsController(anyFacility, ANY_FACILITY) {
  constructor(facilities: FacilitiesService) {
    super(facilities);
  }
}
