import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { handoverFields } from '../../shared/farm/handover.js';
import type { SitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { rowsController } from '../rows/rows-controller.js';
import { HandoverDto } from '../handovers/handover.dto.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { SheetsService, type SheetPreview } from './sheets.service.js';
import { Answers, named } from '../common/answers.js';

const SITTERS_SHEET = named('SittersSheet', 'All that whoever is in charge needs, a page a day.');
const SHEET_PREVIEW = named('SheetPreview', 'A sheet as it would be, and what it would move.');

@ApiTags('hand-overs')
@Controller('farms/:farmId/handovers')
export class HandoversController extends rowsController(handoverFields, HandoverDto) {
  constructor(
    handovers: HandoversService,
    private readonly sheets: SheetsService,
  ) {
    super(handovers);
  }

  /** The sheet as it would be, and what handing these days over would move. Nothing is saved. */
  @Answers(SHEET_PREVIEW)
  @Post('preview')
  @HttpCode(200)
  preview(@Param('farmId') farmId: string, @Body() dto: HandoverDto): Promise<SheetPreview> {
    return this.sheets.preview(farmId, dto);
  }

  /** All that the sitter needs, a page a day. */
  @Answers(SITTERS_SHEET)
  @Get(':id/sheet')
  sheetOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<SitterSheet> {
    return this.sheets.sheetOf(farmId, id);
  }
}
