import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ToldModule } from '../told/told.module.js';
import { WorkModule } from '../work/work.module.js';
import { SampleFarmController } from './sample-farm.controller.js';
import { SampleFarmService } from './sample-farm.service.js';

@Module({
  imports: [FarmsModule, ToldModule, WorkModule],
  controllers: [SampleFarmController],
  providers: [SampleFarmService],
})
export class SampleFarmModule {}
