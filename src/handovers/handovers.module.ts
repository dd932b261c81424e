import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { PeopleModule } from '../people/people.module.js';
import { HandoversService } from './handovers.service.js';

@Module({
  imports: [FarmsModule, PeopleModule],
  providers: [HandoversService],
  exports: [HandoversService],
})
export class HandoversModule {}
