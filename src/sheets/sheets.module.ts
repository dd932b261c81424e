import { Module } from '@nestjs/common';
import { PastureModule } from '../pasture/pasture.module.js';
import { PictureModule } from '../picture/picture.module.js';
import { WorkModule } from '../work/work.module.js';
import { HandoversController } from './handovers.controller.js';
import { HandoversModule } from '../handovers/handovers.module.js';
import { SheetsService } from './sheets.service.js';

/** Sheets need the work, and the work needs to know what is handed over: hence two modules. */
@Module({
  imports: [HandoversModule, PictureModule, PastureModule, WorkModule],
  controllers: [HandoversController],
  providers: [SheetsService],
})
export class SheetsModule {}
