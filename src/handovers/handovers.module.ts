import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { HandoversService } from './handovers.service.js';

@Module({
  imports: [PeopleModule],
  providers: [HandoversService],
  exports: [HandoversService],
})
export class HandoversModule {}
