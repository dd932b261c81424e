import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ToldModule } from '../told/told.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { GrassReadingsController } from './grass-readings.controller.js';
import { GrassReadingsService } from './grass-readings.service.js';

@Module({
  imports: [FarmsModule, PaddocksModule, ToldModule],
  controllers: [GrassReadingsController],
  providers: [GrassReadingsService],
  exports: [GrassReadingsService],
})
export class GrassReadingsModule {}
