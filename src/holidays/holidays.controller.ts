import { Controller, Get } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { AnswersList } from '../common/answers.js';
import { HOLIDAY_COUNTRY } from '../common/plan-answers.js';
import { holidayCountries, type HolidayCountry } from './holidays.js';

@ApiTags('reference')
@Controller('reference')
export class HolidaysController {
  /** Countries and regions whose public holidays are known. */
  @AnswersList(HOLIDAY_COUNTRY)
  @Get('countries')
  countries(): HolidayCountry[] {
    return holidayCountries();
  }
}
