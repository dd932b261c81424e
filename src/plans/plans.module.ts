import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { FacilitiesModule } from '../facilities/facilities.module.js';
import { FarmsModule } from '../farms/farms.module.js';
import { PeopleModule } from '../people/people.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { PlansController } from './plans.controller.js';
import { PlansService } from './plans.service.js';

@Module({
  imports: [FarmsModule, FacilitiesModule, PeopleModule, BatchesModule, WeatherModule],
  controllers: [PlansController],
  providers: [PlansService],
  exports: [PlansService],
})
export class PlansModule {}
