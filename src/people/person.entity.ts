import { Entity, Index } from 'typeorm';
import { personFields, type Person } from '../../shared/farm/farm.js';
import type { Saved } from '../../shared/farm/saved.js';
import { columnsOf, fromColumns } from '../common/columns-of.js';
import { RowOfFarm } from '../rows/row-of-farm.entity.js';

@Entity('people')
@Index('people_farm', ['farmId'])
export class PersonEntity extends columnsOf(personFields, RowOfFarm) {}

export const toPerson = (row: PersonEntity): Saved<Person> => ({
  ...fromColumns(personFields, row),
  id: row.id,
  version: row.version,
});
