import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ToldModule } from '../told/told.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { HerdsController } from './herds.controller.js';
import { HerdsService } from './herds.service.js';

@Module({
  imports: [FarmsModule, PaddocksModule, ToldModule],
  controllers: [HerdsController],
  providers: [HerdsService],
  exports: [HerdsService],
})
export class HerdsModule {}
