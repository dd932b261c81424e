import { Global, Module } from '@nestjs/common';
import { ReferenceController } from './reference.controller.js';
import { TablesService } from './tables.service.js';

@Global()
@Module({
  controllers: [ReferenceController],
  providers: [TablesService],
  exports: [TablesService],
})
export class ReferenceModule {}
