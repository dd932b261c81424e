import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { DataSource } from 'typeorm';
import type { OwnJob } from '../../shared/farm/job.js';
import { ownJobProblems } from '../../shared/plan/season/check-jobs.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { OwnedRows } from '../common/owned-rows.js';
import { PeopleService } from '../people/people.service.js';
import type { JobDto } from './job.dto.js';
import { JobEntity, toJob } from './job.entity.js';

@Injectable()
export class JobsService {
  private readonly rows: OwnedRows<JobEntity>;

  constructor(
    @InjectDataSource() source: DataSource,
    private readonly people: PeopleService,
  ) {
    this.rows = new OwnedRows(source, JobEntity, 'job', { name: 'ASC', id: 'ASC' });
  }

  async create(farmId: string, dto: JobDto): Promise<OwnJob> {
    return toJob(await this.rows.create(farmId, await this.valuesOf(farmId, dto)));
  }

  async findAll(farmId: string): Promise<OwnJob[]> {
    return (await this.rows.findAll(farmId)).map(toJob);
  }

  async findOne(farmId: string, id: string): Promise<OwnJob> {
    return toJob(await this.rows.findOne(farmId, id));
  }

  async update(farmId: string, id: string, dto: JobDto): Promise<OwnJob> {
    return toJob(await this.rows.update(farmId, id, await this.valuesOf(farmId, dto, id)));
  }

  remove(farmId: string, id: string): Promise<void> {
    return this.rows.remove(farmId, id);
  }

  private async valuesOf(
    farmId: string,
    { id: _id, name, ...details }: JobDto,
    ownId = 'new',
  ): Promise<{ name: string; details: JobEntity['details'] }> {
    const [people, others] = await Promise.all([this.people.findAll(farmId), this.findAll(farmId)]);
    const job = { ...details, id: ownId, name };
    const problems = ownJobProblems(job, {
      people,
      ownJobs: [...others.filter((each) => each.id !== ownId), job],
    });
    if (0 < problems.length) throw new FieldError(problems);
    return { name, details };
  }
}
