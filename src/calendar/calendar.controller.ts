import { Controller, Get, Header, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiProduces, ApiQuery, ApiTags } from '@nestjs/swagger';
import { CalendarService } from './calendar.service.js';

@ApiTags('calendar')
@Controller('farms/:farmId')
export class CalendarController {
  constructor(private readonly calendar: CalendarService) {}

  /** A calendar to subscribe to: everyone’s, or that of one person. */
  @Get('calendar.ics')
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @ApiProduces('text/calendar')
  @ApiOkResponse({ schema: { type: 'string', description: 'An iCalendar file' } })
  @ApiQuery({ name: 'person', required: false })
  feedOf(@Param('farmId') farmId: string, @Query('person') person?: string): Promise<string> {
    return this.calendar.feedOf(farmId, person);
  }
}
