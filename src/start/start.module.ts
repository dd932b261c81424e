import { Module } from '@nestjs/common';
import { ClimateEstimateModule } from '../climate-estimate/climate-estimate.module.js';
import { FarmsModule } from '../farms/farms.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PlacesModule } from '../places/places.module.js';
import { ToldModule } from '../told/told.module.js';
import { StartController } from './start.controller.js';
import { StartService } from './start.service.js';

@Module({
  imports: [ClimateEstimateModule, FarmsModule, JobsModule, PlacesModule, ToldModule],
  controllers: [StartController],
  providers: [StartService],
})
export class StartModule {}
