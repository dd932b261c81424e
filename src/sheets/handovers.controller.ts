import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Handover } from '../../shared/farm/handover.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { CaretakerSheet } from '../../shared/plan/handover/caretaker-sheet.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { HandoverDto } from '../handovers/handover.dto.js';
import { HandoversService } from '../handovers/handovers.service.js';
import { SheetsService, type SheetPreview } from './sheets.service.js';

@ApiTags('hand-overs')
@Controller('farms/:farmId/handovers')
export class HandoversController {
  constructor(
    private readonly handovers: HandoversService,
    private readonly sheets: SheetsService,
  ) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: HandoverDto): Promise<Saved<Handover>> {
    return this.handovers.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Handover>[]> {
    return this.handovers.findAll(farmId);
  }

  /** The sheet as it would be, and what handing these days over would move. Nothing is saved. */
  @Post('preview')
  @HttpCode(200)
  preview(@Param('farmId') farmId: string, @Body() dto: HandoverDto): Promise<SheetPreview> {
    return this.sheets.preview(farmId, dto);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Handover>> {
    return this.handovers.findOne(farmId, id);
  }

  /** All that the caretaker needs, a page a day. */
  @Get(':id/sheet')
  sheetOf(@Param('farmId') farmId: string, @Param('id') id: string): Promise<CaretakerSheet> {
    return this.sheets.sheetOf(farmId, id);
  }

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
