import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { TodayModule } from '../today/today.module.js';
import { WorkModule } from '../work/work.module.js';
import { CalendarController } from './calendar.controller.js';
import { CalendarKeys } from './calendar-keys.service.js';
import { CalendarService } from './calendar.service.js';

@Module({
  imports: [FarmsModule, PictureModule, PastureModule, TodayModule, WorkModule],
  controllers: [CalendarController],
  providers: [CalendarKeys, CalendarService],
})
export class CalendarModule {}
