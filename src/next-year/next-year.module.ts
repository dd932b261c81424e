import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { HerdsModule } from '../herds/herds.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { ToldModule } from '../told/told.module.js';
import { NextYearController } from './next-year.controller.js';
import { NextYearService } from './next-year.service.js';

@Module({
  imports: [BatchesModule, HerdsModule, JobsModule, PaddocksModule, PictureModule, ToldModule],
  controllers: [NextYearController],
  providers: [NextYearService],
})
export class NextYearModule {}
