import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { PicturesService } from './pictures.service.js';

@ApiTags('farms')
@Controller('farms/:farmId/picture')
export class PictureController {
  constructor(private readonly pictures: PicturesService) {}

  /** All that plans of this farm are made from, for a page that plans in the browser. */
  @Get()
  async pictureOf(@Param('farmId') farmId: string): Promise<FarmPicture> {
    return (await this.pictures.of(farmId)).picture;
  }
}
