import { Module } from '@nestjs/common';
import { BatchesModule } from '../batches/batches.module.js';
import { FacilitiesModule } from '../facilities/facilities.module.js';
import { FarmsModule } from '../farms/farms.module.js';
import { GrassReadingsModule } from '../grass-readings/grass-readings.module.js';
import { HandoversModule } from '../handovers/handovers.module.js';
import { HerdsModule } from '../herds/herds.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PaddocksModule } from '../paddocks/paddocks.module.js';
import { ProductsModule } from '../products/products.module.js';
import { SuppliersModule } from '../suppliers/suppliers.module.js';
import { PeopleModule } from '../people/people.module.js';
import { ToldModule } from '../told/told.module.js';
import { WeatherModule } from '../weather/weather.module.js';
import { PictureController } from './picture.controller.js';
import { PicturesService } from './pictures.service.js';

@Module({
  imports: [
    FarmsModule,
    FacilitiesModule,
    ProductsModule,
    SuppliersModule,
    PeopleModule,
    BatchesModule,
    PaddocksModule,
    HerdsModule,
    GrassReadingsModule,
    JobsModule,
    HandoversModule,
    ToldModule,
    WeatherModule,
  ],
  controllers: [PictureController],
  providers: [PicturesService],
  exports: [PicturesService],
})
export class PictureModule {}
