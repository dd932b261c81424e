import { Global, Module } from '@nestjs/common';
import { WorkPool } from './work-pool.service.js';

@Global()
@Module({ providers: [WorkPool], exports: [WorkPool] })
export class WorkPoolModule {}
