import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { handoverFields, type Handover } from '../../shared/farm/handover.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { SitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { HandoverDto } from '../handovers/handover.dto.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { SheetsService, type SheetPreview } from './sheets.service.js';
import { Answers, AnswersList, named } from '../common/answers.js';

const SITTERS_SHEET = named('SittersSheet', 'All that whoever is in charge needs, a page a day.');
const SHEET_PREVIEW = named('SheetPreview', 'A sheet as it would be, and what it would move.');

@ApiTags('hand-overs')
@Controller('farms/:farmId/handovers')
export class HandoversController {
  constructor(
    private readonly handovers: HandoversService,
    private readonly sheets: SheetsService,
  ) {}

  @Answers(handoverFields)
  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: HandoverDto): Promise<Saved<Handover>> {
    return this.handovers.create(farmId, dto);
  }

  @AnswersList(handoverFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Handover>[]> {
    return this.handovers.findAll(farmId);
  }

  /** The sheet as it would be, and what handing these days over would move. Nothing is saved. */
  @Answers(SHEET_PREVIEW)
  @Post('preview')
  @HttpCode(200)
  preview(@Param('farmId') farmId: string, @Body() dto: HandoverDto): Promise<SheetPreview> {
    return this.sheets.preview(farmId, dto);
  }

  @Answers(handoverFields)
  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Handover>> {
    return this.handovers.findOne(farmId, id);
  }

  /** All that the sitter needs, a page a day. */
  @Answers(SITTERS_SHEET)
  @Get(':id/sheet')
  sheetOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<SitterSheet> {
    return this.sheets.sheetOf(farmId, id);
  }

  @Answers(handoverFields)
  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: HandoverDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Handover>> {
    return this.handovers.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.handovers.remove(farmId, id, expected);
  }
}
