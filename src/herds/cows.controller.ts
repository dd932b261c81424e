import { Controller } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { cowFields } from '../../shared/farm/cow.js';
import { rowsController } from '../rows/rows-controller.js';
import { CowDto } from './cow.dto.js';
import { CowsService } from './cows.service.js';

@ApiTags('cows')
@Controller('farms/:farmId/cows')
export class CowsController extends rowsController(cowFields, CowDto) {
  constructor(cows: CowsService) {
    super(cows);
  }
}
