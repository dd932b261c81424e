import { Module } from '@nestjs/common';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { SeasonModule } from '../season/season.module.js';
import { CalendarController } from './calendar.controller.js';
import { CalendarKeys } from './calendar-keys.service.js';
import { CalendarService } from './calendar.service.js';

@Module({
  imports: [PictureModule, PastureModule, SeasonModule],
  controllers: [CalendarController],
  providers: [CalendarKeys, CalendarService],
})
export class CalendarModule {}
