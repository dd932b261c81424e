import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { FarmDto, farmViewFields, type FarmView } from './farm.dto.js';
import { FarmsService } from './farms.service.js';
import { Answers, AnswersList } from '../common/answers.js';

@ApiTags('farms')
@Controller('farms')
export class FarmsController {
  constructor(private readonly farms: FarmsService) {}

  @Answers(farmViewFields)
  @Post()
  create(@Body() dto: FarmDto): Promise<FarmView> {
    return this.farms.create(dto);
  }

  /** Loads the invented sample farm. */
  @Answers(farmViewFields)
  @Post('sample')
  createSample(): Promise<FarmView> {
    return this.farms.createSample();
  }

  @AnswersList(farmViewFields)
  @Get()
  findAll(): Promise<FarmView[]> {
    return this.farms.findAll();
  }

  @Answers(farmViewFields)
  @Get(':farmId')
  findOne(@Param('farmId') farmId: string): Promise<FarmView> {
    return this.farms.findOne(farmId);
  }

  @Answers(farmViewFields)
  @Put(':farmId')
  update(@Param('farmId') farmId: string, @Body() dto: FarmDto): Promise<FarmView> {
    return this.farms.update(farmId, dto);
  }

  @Delete(':farmId')
  @HttpCode(204)
  remove(@Param('farmId') farmId: string): Promise<void> {
    return this.farms.remove(farmId);
  }
}
