import { Module } from '@nestjs/common';
import { PictureModule } from '../picture/picture.module.js';
import { ToldModule } from '../told/told.module.js';
import { WorkModule } from '../work/work.module.js';
import { TodayController } from './today.controller.js';
import { TodayService } from './today.service.js';

@Module({
  imports: [WorkModule, PictureModule, ToldModule],
  controllers: [TodayController],
  providers: [TodayService],
  exports: [TodayService],
})
export class TodayModule {}
