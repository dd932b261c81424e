import { Module } from '@nestjs/common';
import { FacilitiesModule } from '../facilities/facilities.module.js';
import { FarmsModule } from '../farms/farms.module.js';
import { BatchesController } from './batches.controller.js';
import { BatchesService } from './batches.service.js';

@Module({
  imports: [FarmsModule, FacilitiesModule],
  controllers: [BatchesController],
  providers: [BatchesService],
  exports: [BatchesService],
})
export class BatchesModule {}
