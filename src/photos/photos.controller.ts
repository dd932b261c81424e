import { Controller, Get, HttpCode, Param, Put, Req, Res, StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { PhotosService } from './photos.service.js';

const FILE = { schema: { type: 'string', format: 'binary' } } as const;

@ApiTags('what happened')
@Controller('farms/:farmId/photos')
export class PhotosController {
  constructor(private readonly photos: PhotosService) {}

  /** Keeps a photo, so that a note can name it. Sent again under its id it stays one photo. */
  @Put(':id')
  @HttpCode(204)
  @ApiConsumes('image/jpeg')
  @ApiBody(FILE)
  keep(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Req() request: Request,
  ): Promise<void> {
    return this.photos.keep(farmId, id, request);
  }

  /** A photo of a note. */
  @Get(':id')
  @ApiProduces('image/jpeg')
  @ApiOkResponse(FILE)
  async find(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile> {
    const jpeg = await this.photos.find(farmId, id);
    // It never changes, so that a phone shows it without signal once it was seen; nobody between keeps it.
    response.setHeader('Cache-Control', 'private, max-age=31536000, immutable');
    return new StreamableFile(jpeg, {
      type: 'image/jpeg',
      disposition: `inline; filename="${id}.jpg"`,
      length: jpeg.length,
    });
  }
}
