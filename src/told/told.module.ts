import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ToldController } from './told.controller.js';
import { ToldService } from './told.service.js';

@Module({
  imports: [FarmsModule],
  controllers: [ToldController],
  providers: [ToldService],
  exports: [ToldService],
})
export class ToldModule {}
