import { Module } from '@nestjs/common';
import { SampleFarmController } from './sample-farm.controller.js';
import { SampleFarmService } from './sample-farm.service.js';

@Module({ controllers: [SampleFarmController], providers: [SampleFarmService] })
export class SampleFarmModule {}
