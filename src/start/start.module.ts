import { Module } from '@nestjs/common';
import { ClimateEstimateModule } from '../climate-estimate/climate-estimate.module.js';
import { PlacesModule } from '../places/places.module.js';
import { StartController } from './start.controller.js';
import { StartService } from './start.service.js';

@Module({
  imports: [ClimateEstimateModule, PlacesModule],
  controllers: [StartController],
  providers: [StartService],
})
export class StartModule {}
