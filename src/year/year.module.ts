import { Module } from '@nestjs/common';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { WorkModule } from '../work/work.module.js';
import { YearController } from './year.controller.js';
import { YearService } from './year.service.js';

@Module({
  imports: [PictureModule, PastureModule, WorkModule, WeatherModule],
  controllers: [YearController],
  providers: [YearService],
})
export class YearModule {}
