import { Injectable } from '@nestjs/common';
import { personFields, type Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import { RowsOfFarm } from '../rows/rows-of-farm.js';
import { toColumns } from '../common/columns-of.js';
import { Database } from '../database/database.js';
import type { PersonDto } from './person.dto.js';
import { PersonEntity, toPerson } from './person.entity.js';

@Injectable()
export class PeopleService extends RowsOfFarm<PersonEntity, Saved<Person>, PersonDto> {
  constructor(database: Database) {
    super(database, PersonEntity, {
      noun: 'person',
      order: ['name', 'id'],
      tells: { of: 'person', fields: (row) => ({ ...toPerson(row) }), name: (row) => row.name },
      view: toPerson,
    });
  }

  protected valuesOf(_farmId: string, sent: PersonDto) {
    return toColumns(personFields, sent);
  }
}
