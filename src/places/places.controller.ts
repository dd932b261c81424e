import { Controller, Get, Query } from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import { farmFields } from '../../shared/farm/farm.js';
import { choice, optional, row, text } from '../../shared/farm/field.js';
import {
  placesFoundFields,
  pointFields,
  type PlacesFound,
  type Point,
} from '../../shared/farm/place.js';
import { Answers } from '../common/answers.js';
import { checkDto } from '../common/check-dto.js';
import { dtoOf } from '../common/dto-of.js';
import { numbersIn } from '../common/numbers-in.js';
import { PlacesService } from './places.service.js';

const { latitudeDeg, longitudeDeg } = farmFields.fields;
/** Asking outside tells the weather service what is looked for; nothing is sent unless it is said. */
const online = optional(choice('May be asked online', ['yes', 'no']));

const homeCountry = optional(text('Own country', 2));

class PlaceNameDto extends dtoOf(
  row('PlaceName', { name: text('Name', 100), online, homeCountry }),
) {}
class PlacePointDto extends dtoOf(row('PlacePoint', { latitudeDeg, longitudeDeg, online })) {}

@ApiTags('places')
@Controller('places')
export class PlacesController {
  constructor(private readonly places: PlacesService) {}

  /** Places by name; "Springfield, VT" or "Springfield Vermont" looks in one state or country. */
  @Answers(placesFoundFields)
  @Get()
  @ApiQuery({ name: 'name', type: String })
  @ApiQuery({ name: 'online', enum: ['yes', 'no'], required: false })
  @ApiQuery({ name: 'homeCountry', type: String, required: false })
  find(@Query() query: Record<string, unknown>): Promise<PlacesFound> {
    const asked = checkDto(PlaceNameDto, query);
    return this.places.find(asked.name, asked.online === 'yes', asked.homeCountry);
  }

  /** Time zone, units, currency and country of coordinates; their height only when asked online. */
  @Answers(pointFields)
  @Get('at')
  @ApiQuery({ name: 'latitudeDeg', type: Number })
  @ApiQuery({ name: 'longitudeDeg', type: Number })
  @ApiQuery({ name: 'online', enum: ['yes', 'no'], required: false })
  at(@Query() query: Record<string, unknown>): Promise<Point> {
    const asked = checkDto(PlacePointDto, numbersIn(query, ['latitudeDeg', 'longitudeDeg']));
    return this.places.at(asked, asked.online === 'yes');
  }
}
