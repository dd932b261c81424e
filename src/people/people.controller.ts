import { Controller } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { personFields } from '../../shared/farm/farm.js';
import { rowsController } from '../rows/rows-controller.js';
import { PeopleService } from './people.service.js';
import { PersonDto } from './person.dto.js';

@ApiTags('people')
@Controller('farms/:farmId/people')
export class PeopleController extends rowsController(personFields, PersonDto) {
  constructor(people: PeopleService) {
    super(people);
  }
}
