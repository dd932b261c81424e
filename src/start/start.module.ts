import { Module } from '@nestjs/common';
import { ClimateEstimateModule } from '../climate-estimate/climate-estimate.module.js';
import { StartController } from './start.controller.js';
import { StartService } from './start.service.js';

@Module({
  imports: [ClimateEstimateModule],
  controllers: [StartController],
  providers: [StartService],
})
export class StartModule {}
