import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ToldModule } from '../told/told.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { CowsController } from './cows.controller.js';
import { CowsService } from './cows.service.js';
import { HerdsController } from './herds.controller.js';
import { HerdsService } from './herds.service.js';

@Module({
  imports: [FarmsModule, PaddocksModule, ToldModule],
  controllers: [HerdsController, CowsController],
  providers: [HerdsService, CowsService],
  exports: [HerdsService, CowsService],
})
export class HerdsModule {}
