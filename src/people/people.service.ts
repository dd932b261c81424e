import { Injectable } from '@nestjs/common';
import type { Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../common/owned-rows.js';
import { Database } from '../database/database.js';
import { checkAway, type PersonDto } from './person.dto.js';
import { PersonEntity, toPerson } from './person.entity.js';

@Injectable()
export class PeopleService {
  private readonly rows: OwnedRows<PersonEntity>;

  constructor(database: Database) {
    this.rows = new OwnedRows(database, PersonEntity, {
      noun: 'person',
      order: { name: 'ASC', id: 'ASC' },
      view: toPerson,
    });
  }

  async create(farmId: string, dto: PersonDto): Promise<Saved<Person>> {
    checkAway(dto);
    return toPerson(await this.rows.create(farmId, valuesOf(dto)));
  }

  async findAll(farmId: string): Promise<Saved<Person>[]> {
    return (await this.rows.findAll(farmId)).map(toPerson);
  }

  async findOne(farmId: string, id: string): Promise<Saved<Person>> {
    return toPerson(await this.rows.findOne(farmId, id));
  }

  async update(
    farmId: string,
    id: string,
    dto: PersonDto,
    expected?: Expected,
  ): Promise<Saved<Person>> {
    checkAway(dto);
    return toPerson(await this.rows.update(farmId, id, valuesOf(dto), expected));
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }
}

const valuesOf = ({ name, away, hoursByWeekday, startH }: PersonDto) => ({
  name,
  away,
  hoursByWeekday: hoursByWeekday ?? null,
  startH: startH ?? null,
});
