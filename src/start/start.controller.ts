import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { Answers } from '../common/answers.js';
import { farmViewFields, type FarmView } from '../farms/farm.dto.js';
import { StartDto } from './start.dto.js';
import { StartService } from './start.service.js';

@ApiTags('farms')
@Controller('farms/start')
export class StartController {
  constructor(private readonly starts: StartService) {}

  /** A whole farm from where it is, who is there and what is coming; the rest is assumed. */
  @Answers(farmViewFields)
  @Post()
  create(@Body() dto: StartDto): Promise<FarmView> {
    return this.starts.create(dto);
  }
}
