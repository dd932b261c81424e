import { Module } from '@nestjs/common';
import { ToldModule } from '../told/told.module.js';
import { GrazingDays } from './grazing-days.js';
import { PaddocksController } from './paddocks.controller.js';
import { PaddocksService } from './paddocks.service.js';

@Module({
  imports: [ToldModule],
  controllers: [PaddocksController],
  providers: [PaddocksService, GrazingDays],
  exports: [PaddocksService],
})
export class PaddocksModule {}
