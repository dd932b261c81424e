import { Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { FarmView } from '../farms/farm.dto.js';
import { SampleFarmService } from './sample-farm.service.js';

@ApiTags('farms')
@Controller('farms/sample')
export class SampleFarmController {
  constructor(private readonly sample: SampleFarmService) {}

  /** Loads the invented sample farm. */
  @Post()
  create(): Promise<FarmView> {
    return this.sample.create();
  }
}
