import { Module } from '@nestjs/common';
import { PictureModule } from '../picture/picture.module.js';
import { PastureController } from './pasture.controller.js';
import { PastureService } from './pasture.service.js';

@Module({
  imports: [PictureModule],
  controllers: [PastureController],
  providers: [PastureService],
  exports: [PastureService],
})
export class PastureModule {}
