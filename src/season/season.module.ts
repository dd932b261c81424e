import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { FarmsModule } from '../farms/farms.module.js';
import { HandoversModule } from '../handovers/handovers.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PastureModule } from '../pasture/pasture.module.js';
import { PeopleModule } from '../people/people.module.js';
import { PlansModule } from '../plans/plans.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { ToldModule } from '../told/told.module.js';
import { HouseholdController } from './household.controller.js';
import { SeasonController } from './season.controller.js';
import { SeasonRequests } from './season-requests.service.js';
import { SeasonService } from './season.service.js';

@Module({
  imports: [
    FarmsModule,
    PeopleModule,
    BatchesModule,
    PlansModule,
    PastureModule,
    JobsModule,
    HandoversModule,
    WeatherModule,
    ToldModule,
  ],
  controllers: [SeasonController, HouseholdController],
  providers: [SeasonRequests, SeasonService],
  exports: [SeasonRequests, SeasonService],
})
export class SeasonModule {}
