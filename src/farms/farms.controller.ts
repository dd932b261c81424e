import {
  Body,
  Controller,
  Delete,
  Get,
  HttpCode,
  Param,
  Post,
  Put,
  Query,
  Res,
} from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { checkDto } from '../common/check-dto.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { PageDto, withNumbers } from '../common/page.dto.js';
import { SentFarmDto, farmViewFields, type FarmView } from './farm.dto.js';
import { FarmsService } from './farms.service.js';
import { Answers, AnswersList } from '../common/answers.js';

const FARMS_AT_ONCE = 500;

@ApiTags('farms')
@Controller('farms')
export class FarmsController {
  constructor(private readonly farms: FarmsService) {}

  @Answers(farmViewFields)
  @Post()
  create(@Body() dto: SentFarmDto): Promise<FarmView> {
    return this.farms.create(dto);
  }

  /** Farms by name, up to 500 at once; the header X-Total-Count says how many there are. */
  @AnswersList(farmViewFields)
  @Get()
  @ApiQuery({ name: 'skip', required: false, type: Number })
  @ApiQuery({ name: 'take', required: false, type: Number, description: '500 when left out.' })
  async findAll(
    @Query() query: Record<string, unknown>,
    @Res({ passthrough: true }) response: Response,
  ): Promise<FarmView[]> {
    const { skip = 0, take = FARMS_AT_ONCE } = checkDto(PageDto, withNumbers(query));
    const { farms, total } = await this.farms.findAll(skip, take);
    response.setHeader('X-Total-Count', total);
    return farms;
  }

  @Answers(farmViewFields)
  @Get(':farmId')
  findOne(@Param('farmId') farmId: string): Promise<FarmView> {
    return this.farms.findOne(farmId);
  }

  @Answers(farmViewFields)
  @Put(':farmId')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Body() dto: SentFarmDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<FarmView> {
    return this.farms.update(farmId, dto, expected);
  }

  @Delete(':farmId')
  @TakesVersion()
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @ExpectedVersion() expected: Expected): Promise<void> {
    return this.farms.remove(farmId, expected);
  }
}
