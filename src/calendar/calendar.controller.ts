import { Controller, Get, Header, HttpCode, Param, Post, Query } from '@nestjs/common';
import { ApiProduces, ApiQuery, ApiTags } from '@nestjs/swagger';
import { CalendarKeys, type CalendarAddress } from './calendar-keys.service.js';
import { CalendarService } from './calendar.service.js';

@ApiTags('calendar')
@Controller('farms/:farmId')
export class CalendarController {
  constructor(
    private readonly calendar: CalendarService,
    private readonly keys: CalendarKeys,
  ) {}

  /** A calendar to subscribe to: everyone’s, or that of one person. */
  @Get('calendar.ics')
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @ApiProduces('text/calendar')
  @ApiQuery({ name: 'person', required: false })
  @ApiQuery({
    name: 'key',
    required: false,
    description: 'Needed when the program is open to the network.',
  })
  async feedOf(
    @Param('farmId') farmId: string,
    @Query('person') person?: string,
    @Query('key') key?: string,
  ): Promise<string> {
    await this.keys.check(farmId, key);
    return this.calendar.feedOf(farmId, person);
  }

  /** The address to subscribe to, with the key that it needs when the network is open. */
  @Get('calendar')
  addressOf(@Param('farmId') farmId: string): Promise<CalendarAddress> {
    return this.keys.addressOf(farmId);
  }

  /** Makes the key anew; the old address then gives nothing. */
  @Post('calendar/key')
  @HttpCode(200)
  renewKey(@Param('farmId') farmId: string): Promise<CalendarAddress> {
    return this.keys.renew(farmId);
  }
}
