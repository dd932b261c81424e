import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { PeopleModule } from '../people/people.module.js';
import { ToldModule } from '../told/told.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { JobsController } from './jobs.controller.js';
import { JobsService } from './jobs.service.js';

@Module({
  imports: [PeopleModule, FarmsModule, ToldModule, WeatherModule],
  controllers: [JobsController],
  providers: [JobsService],
  exports: [JobsService],
})
export class JobsModule {}
