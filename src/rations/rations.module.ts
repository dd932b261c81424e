import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { ProductsModule } from '../products/products.module.js';
import { RationsController } from './rations.controller.js';
import { RationsService } from './rations.service.js';

@Module({
  imports: [FarmsModule, ProductsModule],
  controllers: [RationsController],
  providers: [RationsService],
})
export class RationsModule {}
