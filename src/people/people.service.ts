import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import { personFields, type Person } from '../../shared/farm/farm.js';
import { OwnedRows } from '../common/owned-rows.js';
import { toColumns } from '../database/columns-of.js';
import type { PersonDto } from './person.dto.js';
import { PersonEntity, toPerson } from './person.entity.js';

@Injectable()
export class PeopleService {
  private readonly rows: OwnedRows<PersonEntity>;

  constructor(@InjectDataSource() source: DataSource) {
    this.rows = new OwnedRows(source, PersonEntity, 'person', { name: 'ASC' });
  }

  async create(farmId: string, dto: PersonDto): Promise<Person> {
    return toPerson(await this.rows.create(farmId, toColumns(personFields, dto)));
  }

  async findAll(farmId: string): Promise<Person[]> {
    return (await this.rows.findAll(farmId)).map(toPerson);
  }

  async findOne(farmId: string, id: string): Promise<Person> {
    return toPerson(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, dto: PersonDto): Promise<Person> {
    return toPerson(await this.rows.update(farmId, id, toColumns(personFields, dto)));
  }

  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id);
  }
}
