import { Module } from '@nestjs/common';
import { ClimateEstimateController } from './climate-estimate.controller.js';
import { ClimateEstimateService } from './climate-estimate.service.js';

@Module({
  controllers: [ClimateEstimateController],
  providers: [ClimateEstimateService],
  exports: [ClimateEstimateService],
})
export class ClimateEstimateModule {}
