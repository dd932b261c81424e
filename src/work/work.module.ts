import { Module } from '@nestjs/common';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { ToldModule } from '../told/told.module.js';
import { HouseholdController } from './household.controller.js';
import { WorkController } from './work.controller.js';
import { WorkIfService } from './work-if.service.js';
import { WorkService } from './work.service.js';

@Module({
  imports: [PictureModule, PastureModule, ToldModule, WeatherModule],
  controllers: [WorkController, HouseholdController],
  providers: [WorkService, WorkIfService],
  exports: [WorkService],
})
export class WorkModule {}
