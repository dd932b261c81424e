import { Module } from '@nestjs/common';
import { FacilitiesModule } from '../facilities/facilities.module.js';
import { SeasonModule } from '../season/season.module.js';
import { HandoversController } from './handovers.controller.js';
import { HandoversModule } from '../handovers/handovers.module.js';
import { SheetsService } from './sheets.service.js';

/** Sheets need the season, and the season needs to know what is handed over: hence two modules. */
@Module({
  imports: [HandoversModule, SeasonModule, FacilitiesModule],
  controllers: [HandoversController],
  providers: [SheetsService],
})
export class SheetsModule {}
