import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import { ExpectedVersion, TakesVersion, type Expected } from '../common/expected-version.js';
import { PeopleService } from './people.service.js';
import { PersonDto } from './person.dto.js';

@ApiTags('people')
@Controller('farms/:farmId/people')
export class PeopleController {
  constructor(private readonly people: PeopleService) {}

  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: PersonDto): Promise<Saved<Person>> {
    return this.people.create(farmId, dto);
  }

  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Saved<Person>[]> {
    return this.people.findAll(farmId);
  }

  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Saved<Person>> {
    return this.people.findOne(farmId, id);
  }

  @Put(':id')
  @TakesVersion()
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: PersonDto,
    @ExpectedVersion() expected: Expected,
  ): Promise<Saved<Person>> {
    return this.people.update(farmId, id, dto, expected);
  }

  @Delete(':id')
  @TakesVersion()
  @HttpCode(204)
  remove(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @ExpectedVersion() expected: Expected,
  ): Promise<void> {
    return this.people.remove(farmId, id, expected);
  }
}
