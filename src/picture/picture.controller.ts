import { Controller, Get, Param, Query, Res } from '@nestjs/common';
import { ApiQuery, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { changedParts } from '../../shared/farm/picture-since.js';
import { Answers } from '../common/answers.js';
import { FARM_PICTURE } from '../common/plan-answers.js';
import { PicturesService } from './pictures.service.js';

@ApiTags('farms')
@Controller('farms/:farmId/picture')
export class PictureController {
  constructor(private readonly pictures: PicturesService) {}

  /**
   * All that plans of this farm are made from, for a page that plans in the browser. With `since`, the
   * header `Mark` of one read before, only the parts that have changed; the header `Since` says so.
   */
  @Answers(FARM_PICTURE)
  @Get()
  @ApiQuery({
    name: 'since',
    required: false,
    type: String,
    description:
      'Mark of the picture that is known: its parts that are still the same are left out.',
  })
  async pictureOf(
    @Param('farmId') farmId: string,
    @Query('since') since: unknown,
    @Res({ passthrough: true }) response: Response,
  ): Promise<Partial<FarmPicture>> {
    const { picture, mark } = await this.pictures.of(farmId);
    response.setHeader('Mark', mark);
    // A mark that is forgotten, or of a service that ran before this one, is answered with the whole.
    const before = typeof since === 'string' ? this.pictures.ofMark(farmId, since) : undefined;
    if (!before) return picture;
    response.setHeader('Since', before.mark);
    return changedParts(before.picture, picture);
  }
}
