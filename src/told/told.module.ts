import { Module } from '@nestjs/common';
import { ToldService } from './told.service.js';

@Module({ providers: [ToldService], exports: [ToldService] })
export class ToldModule {}
