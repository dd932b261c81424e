import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { FarmDto, type FarmView } from './farm.dto.js';
import { FarmsService } from './farms.service.js';

@ApiTags('farms')
@Controller('farms')
export class FarmsController {
  constructor(private readonly farms: FarmsService) {}

  @Post()
  create(@Body() dto: FarmDto): Promise<FarmView> {
    return this.farms.create(dto);
  }

  @Get()
  findAll(): Promise<FarmView[]> {
    return this.farms.findAll();
  }

  @Get(':farmId')
  findOne(@Param('farmId') farmId: string): Promise<FarmView> {
    return this.farms.findOne(farmId);
  }

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
