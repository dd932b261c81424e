import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { ToldModule } from '../told/told.module.js';
import { RecordController } from './record.controller.js';
import { RecordService } from './record.service.js';

@Module({
  imports: [BatchesModule, PictureModule, ToldModule],
  controllers: [RecordController],
  providers: [RecordService],
})
export class RecordModule {}
