import { Body, Controller, Get, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { startUsualFields, type StartUsual } from '../../shared/farm/start.js';
import { Answers } from '../common/answers.js';
import { farmViewFields, type FarmView } from '../farms/farm.dto.js';
import { StartDto } from './start.dto.js';
import { StartService } from './start.service.js';

@ApiTags('farms')
@Controller()
export class StartController {
  constructor(private readonly starts: StartService) {}

  /** What is taken where nobody says it: the height, and hours by when somebody has time. */
  @Answers(startUsualFields)
  @Get('start-usual')
  usual(): StartUsual {
    return this.starts.usual();
  }

  /** A whole farm from where it is, who is there and what is coming; the rest is assumed. */
  @Answers(farmViewFields)
  @Post('farms/start')
  create(@Body() dto: StartDto): Promise<FarmView> {
    return this.starts.create(dto);
  }
}
