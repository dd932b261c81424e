import { Module } from '@nestjs/common';
import { ClimateEstimateModule } from '../climate-estimate/climate-estimate.module.js';
import { FarmsController } from './farms.controller.js';
import { FarmsService } from './farms.service.js';

@Module({
  imports: [ClimateEstimateModule],
  controllers: [FarmsController],
  providers: [FarmsService],
  exports: [FarmsService],
})
export class FarmsModule {}
