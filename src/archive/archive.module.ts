import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ArchiveController } from './archive.controller.js';
import { ArchiveService } from './archive.service.js';
import { DatabaseHold } from './database-hold.js';

@Module({
  imports: [FarmsModule],
  controllers: [ArchiveController],
  providers: [ArchiveService, DatabaseHold],
})
export class ArchiveModule {}
