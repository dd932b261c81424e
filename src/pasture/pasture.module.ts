import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { GrassReadingsModule } from '../grass-readings/grass-readings.module.js';
import { HerdsModule } from '../herds/herds.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { PlansModule } from '../plans/plans.module.js';
import { PastureController } from './pasture.controller.js';
import { PastureService } from './pasture.service.js';

@Module({
  imports: [FarmsModule, PaddocksModule, HerdsModule, GrassReadingsModule, PlansModule],
  controllers: [PastureController],
  providers: [PastureService],
  exports: [PastureService],
})
export class PastureModule {}
