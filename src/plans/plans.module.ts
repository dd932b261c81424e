import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { FeedModule } from '../feed/feed.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { PlansController } from './plans.controller.js';
import { PlansService } from './plans.service.js';

@Module({
  imports: [BatchesModule, FeedModule, PictureModule],
  controllers: [PlansController],
  providers: [PlansService],
})
export class PlansModule {}
