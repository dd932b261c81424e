import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { type Person, personFields } from '../../shared/farm/farm.js';
import { PeopleService } from './people.service.js';
import { PersonDto } from './person.dto.js';
import { Answers, AnswersList } from '../common/answers.js';

@ApiTags('people')
@Controller('farms/:farmId/people')
export class PeopleController {
  constructor(private readonly people: PeopleService) {}

  @Answers(personFields)
  @Post()
  create(@Param('farmId') farmId: string, @Body() dto: PersonDto): Promise<Person> {
    return this.people.create(farmId, dto);
  }

  @AnswersList(personFields)
  @Get()
  findAll(@Param('farmId') farmId: string): Promise<Person[]> {
    return this.people.findAll(farmId);
  }

  @Answers(personFields)
  @Get(':id')
  findOne(@Param('farmId') farmId: string, @Param('id') id: string): Promise<Person> {
    return this.people.findOne(farmId, id);
  }

  @Answers(personFields)
  @Put(':id')
  update(
    @Param('farmId') farmId: string,
    @Param('id') id: string,
    @Body() dto: PersonDto,
  ): Promise<Person> {
    return this.people.update(farmId, id, dto);
  }

  @Delete(':id')
  @HttpCode(204)
  remove(@Param('farmId') farmId: string, @Param('id') id: string): Promise<void> {
    return this.people.remove(farmId, id);
  }
}
