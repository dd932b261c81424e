import { Module } from '@nestjs/common';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { ToldModule } from '../told/told.module.js';
import { HouseholdController } from './household.controller.js';
import { SeasonController } from './season.controller.js';
import { SeasonService } from './season.service.js';

@Module({
  imports: [PictureModule, PastureModule, ToldModule, WeatherModule],
  controllers: [SeasonController, HouseholdController],
  providers: [SeasonService],
  exports: [SeasonService],
})
export class SeasonModule {}
