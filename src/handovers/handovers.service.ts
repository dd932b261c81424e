import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import type { Handover } from '../../shared/farm/handover.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { OwnedRows } from '../common/owned-rows.js';
import { PeopleService } from '../people/people.service.js';
import type { HandoverDto } from './handover.dto.js';
import { HandoverEntity, toHandover } from './handover.entity.js';

@Injectable()
export class HandoversService {
  private readonly rows: OwnedRows<HandoverEntity>;

  constructor(
    @InjectDataSource() source: DataSource,
    private readonly people: PeopleService,
  ) {
    this.rows = new OwnedRows(source, HandoverEntity, 'hand-over', { firstDay: 'ASC', id: 'ASC' });
  }

  async create(farmId: string, dto: HandoverDto): Promise<Handover> {
    return toHandover(await this.rows.create(farmId, await this.valuesOf(farmId, dto)));
  }

  async findAll(farmId: string): Promise<Handover[]> {
    return (await this.rows.findAll(farmId)).map(toHandover);
  }

  async findOne(farmId: string, id: string): Promise<Handover> {
    return toHandover(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, dto: HandoverDto): Promise<Handover> {
    return toHandover(await this.rows.update(farmId, id, await this.valuesOf(farmId, dto, id)));
  }

  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id);
  }

  private async valuesOf(
    farmId: string,
    { id: _id, from, ...details }: HandoverDto,
    ownId = 'new',
  ): Promise<{ firstDay: string; details: HandoverEntity['details'] }> {
    const [people, others] = await Promise.all([this.people.findAll(farmId), this.findAll(farmId)]);
    const problems = handoverProblems({ ...details, id: ownId, from }, { people, others });
    if (0 < problems.length) throw new FieldError(problems);
    return { firstDay: from, details };
  }
}
