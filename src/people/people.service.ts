import { Injectable } from '@nestjs/common';
import { personFields, type Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../rows/owned-rows.js';
import { toColumns } from '../common/columns-of.js';
import { Database } from '../database/database.js';
import type { PersonDto } from './person.dto.js';
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
    return toPerson(await this.rows.create(farmId, toColumns(personFields, dto)));
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
    return toPerson(await this.rows.update(farmId, id, toColumns(personFields, dto), expected));
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }
}
