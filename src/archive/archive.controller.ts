import { Controller, Get, Param, Post, Req, Res, StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { createReadStream } from 'node:fs';
import type { FarmView } from '../farms/farm.dto.js';
import { ArchiveService } from './archive.service.js';

const FILE = { schema: { type: 'string', format: 'binary' } } as const;

@ApiTags('farms')
@Controller('farms')
export class ArchiveController {
  constructor(private readonly archive: ArchiveService) {}

  /** Everything that belongs to a farm, as one file. */
  @Get(':farmId/archive')
  @ApiProduces('application/zip')
  @ApiOkResponse(FILE)
  async download(
    @Param('farmId') farmId: string,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile> {
    const { path, name, remove } = await this.archive.write(farmId);
    response.once('close', () => void remove());
    return new StreamableFile(createReadStream(path), {
      type: 'application/zip',
      disposition: `attachment; filename="${name}"`,
    });
  }

  /** Makes a new farm of such a file. */
  @Post('archive')
  @ApiConsumes('application/zip')
  @ApiBody(FILE)
  read(@Req() request: Request): Promise<FarmView> {
    return this.archive.read(request);
  }
}
