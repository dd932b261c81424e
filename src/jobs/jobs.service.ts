import { Injectable, NotFoundException } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import { restingSince, type KeptJob } from '../../shared/farm/resting-jobs.js';
import { progressOf } from '../../shared/farm/told-fact.js';
import type { Saved } from '../../shared/farm/saved.js';
import { ownJobProblems } from '../../shared/plan/work/check-jobs.js';
import { jobsToTake, suggestedAnchor } from '../../shared/plan/work/job-sets.js';
import type { JobSet } from '../../shared/tables/job-sets.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../rows/owned-rows.js';
import { Database } from '../database/database.js';
import { PeopleService } from '../people/people.service.js';
import { FarmsService } from '../farms/farms.service.js';
import { TablesService } from '../reference/tables.service.js';
import { ToldService } from '../told/told.service.js';
import { WeatherService } from '../weather/weather.service.js';
import type { JobDto, TakenSetDto } from './job.dto.js';
import { JobEntity, toJob } from './job.entity.js';

@Injectable()
export class JobsService {
  private readonly rows: OwnedRows<JobEntity>;

  constructor(
    private readonly database: Database,
    private readonly people: PeopleService,
    private readonly farms: FarmsService,
    private readonly told: ToldService,
    private readonly tables: TablesService,
    private readonly weather: WeatherService,
  ) {
    this.rows = new OwnedRows(database, JobEntity, {
      noun: 'job',
      order: ['name', 'id'],
      tells: { of: 'job', fields: (row) => ({ ...toJob(row) }), name: (row) => row.name },
      view: async (row) => this.withRest(row, await this.restOn(row.farmId)),
      // What rests takes no place among the jobs there may be.
      count: async (farmId, rows) => {
        const rest = await this.restOn(farmId);
        return rows.filter((row) => rest(row) === undefined).length;
      },
    });
  }

  /** @param comesAgain a job of an earlier year, on its day a year later, whenever that is */
  create(farmId: string, dto: JobDto, comesAgain = false): Promise<Saved<KeptJob>> {
    return this.database.write(farmId, async () => {
      if (!comesAgain) await this.refuseLongPast(farmId, dto);
      return toJob(await this.rows.create(farmId, await this.valuesOf(farmId, dto)));
    });
  }

  async findAll(farmId: string): Promise<Saved<KeptJob>[]> {
    const rows = await this.rows.findAll(farmId);
    const rest = await this.restOn(farmId);
    return rows.map((row) => this.withRest(row, rest));
  }

  async findOne(farmId: string, id: string): Promise<Saved<KeptJob>> {
    const row = await this.rows.findOne(farmId, id);
    return this.withRest(row, await this.restOn(farmId));
  }

  update(farmId: string, id: string, dto: JobDto, expected?: Expected): Promise<Saved<KeptJob>> {
    return this.database.write(farmId, async () => {
      const before = await this.rows.findOne(farmId, id);
      if (dto.dueOn !== before.details.dueOn) await this.refuseLongPast(farmId, dto);
      const values = await this.valuesOf(farmId, dto, id);
      return toJob(await this.rows.update(farmId, id, values, expected));
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }

  /** Takes a set on the date that is suggested for it, for so many of what it is counted in. */
  async takeUsual(farmId: string, setId: string, count: number): Promise<void> {
    const set = this.setOf(setId);
    const farm = await this.farms.findOne(farmId);
    const climate = await this.weather.climateOf(farm);
    const today = plainDateAt(Date.now(), farm.timeZone);
    const anchorOn = suggestedAnchor(set, { farm, climate, tables: this.tables.tables, today });
    await this.takeSet(farmId, setId, { anchorOn, count: count * set.counted[farm.units].each });
  }

  async takeSet(farmId: string, setId: string, dto: TakenSetDto): Promise<Saved<KeptJob>[]> {
    const set = this.setOf(setId);
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    const place = { climate: await this.weather.climateOf(farm), latitudeDeg: farm.latitudeDeg };
    const jobs = jobsToTake(set, { ...dto, today, place });
    if (jobs.length === 0) {
      throw new FieldError([
        {
          field: 'anchorOn',
          code: 'out-of-bounds',
          given: dto.anchorOn,
          min: today,
          fix: 'All its work would lie in the past: give the date of the coming season.',
        },
      ]);
    }
    const own = new Map(jobs.map(({ id }) => [id, randomUUID()]));
    const rows = jobs.map(({ id, name, waitsForId, ...details }) => ({
      id: own.get(id)!,
      name,
      details:
        waitsForId === undefined ? details : { ...details, waitsForId: own.get(waitsForId)! },
    }));
    return this.database.write(farmId, async () => {
      const rest = await this.restOn(farmId);
      const kept = await this.rows.createAll(farmId, rows, (before) => {
        const isTaken = before.some(
          (row) => row.details.setId === setId && rest(row) === undefined,
        );
        if (isTaken) throw takenAlready(set);
      });
      return kept.map((row) => toJob(row));
    });
  }

  /** Leaves a set: its jobs go, but for those at rest, which are history. */
  async leaveSet(farmId: string, setId: string): Promise<void> {
    this.setOf(setId);
    await this.database.write(farmId, async () => {
      const rest = await this.restOn(farmId);
      await this.rows.removeAll(
        farmId,
        (row) => row.details.setId === setId && rest(row) === undefined,
      );
    });
  }

  /** Since when each job rests, by what was told of it. */
  private async restOn(farmId: string): Promise<(row: JobEntity) => string | undefined> {
    const { timeZone } = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), timeZone);
    const progress = progressOf(await this.told.factsOf(farmId, 'work-progress'));
    const byKey = new Map(progress.map((mark) => [mark.key, mark]));
    const { restDoneDays, restLostDays } = this.tables.tables.judgements.work;
    const after = { doneDays: restDoneDays.value, lostDays: restLostDays.value };
    return ({ id, details }) => restingSince(details, byKey.get(`own/${id}`), today, after);
  }

  private withRest(row: JobEntity, rest: (row: JobEntity) => string | undefined): Saved<KeptJob> {
    const since = rest(row);
    return { ...toJob(row), ...(since === undefined ? {} : { restingSince: since }) };
  }

  private setOf(setId: string): JobSet {
    const set = this.tables.tables.jobSets.find(({ id }) => id === setId);
    if (set) return set;
    throw new NotFoundException(`There is no set of jobs with the id "${setId.slice(0, 64)}".`);
  }

  /** What was due long ago is typed with the year before: taken so, it would be late for good. */
  private async refuseLongPast(farmId: string, { dueOn }: JobDto): Promise<void> {
    const today = plainDateAt(Date.now(), (await this.farms.findOne(farmId)).timeZone);
    const { dueLongPastDays } = this.tables.tables.judgements.work;
    const min = addDays(today, -dueLongPastDays.value);
    if (min <= dueOn) return;
    throw new FieldError([
      {
        ...{ field: 'dueOn', code: 'out-of-bounds', given: dueOn, min },
        fix: 'That was due long ago. Check the year; if it is still to be done, give a day by which it is done now.',
      },
    ]);
  }

  private async valuesOf(
    farmId: string,
    { id: _id, version: _version, name, ...details }: JobDto,
    ownId = 'new',
  ): Promise<{ name: string; details: JobEntity['details'] }> {
    const people = await this.people.findAll(farmId);
    const others = await this.findAll(farmId);
    const job = { ...details, id: ownId, name };
    const problems = ownJobProblems(job, {
      people,
      ownJobs: [...others.filter((each) => each.id !== ownId), job],
    });
    if (0 < problems.length) throw new FieldError(problems);
    return { name, details };
  }
}

const takenAlready = ({ id, name }: JobSet): FieldError =>
  new FieldError([
    {
      field: 'setId',
      code: 'conflict',
      given: id,
      fix: `“${name}” is among your jobs already: leave it first to take it again on other dates.`,
    },
  ]);
