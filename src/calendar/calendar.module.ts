import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { ToldModule } from '../told/told.module.js';
import { WorkModule } from '../work/work.module.js';
import { CalendarController } from './calendar.controller.js';
import { CalendarKeys } from './calendar-keys.service.js';
import { CalendarService } from './calendar.service.js';

@Module({
  imports: [ToldModule, FarmsModule, PictureModule, PastureModule, WorkModule],
  controllers: [CalendarController],
  providers: [CalendarKeys, CalendarService],
})
export class CalendarModule {}
