import { Controller } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { batchFields } from '../../shared/farm/batch.js';
import { rowsController } from '../rows/rows-controller.js';
import { BatchesService } from './batches.service.js';
import { BatchDto } from './batch.dto.js';

@ApiTags('batches')
@Controller('farms/:farmId/batches')
export class BatchesController extends rowsController(batchFields, BatchDto) {
  constructor(batches: BatchesService) {
    super(batches);
  }
}
