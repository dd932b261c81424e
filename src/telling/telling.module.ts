import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { ToldModule } from '../told/told.module.js';
import { WorkModule } from '../work/work.module.js';
import { TellingService } from './telling.service.js';
import { ToldController } from './told.controller.js';

@Module({
  imports: [FarmsModule, ToldModule, PictureModule, PastureModule, WorkModule],
  controllers: [ToldController],
  providers: [TellingService],
})
export class TellingModule {}
