import { Injectable } from '@nestjs/common';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { Saved } from '../../shared/farm/saved.js';
import { overAlready } from '../../shared/farm/absences.js';
import { handoverProblems } from '../../shared/plan/handover/check-handover.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { RowsOfFarm } from '../rows/rows-of-farm.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { PeopleService } from '../people/people.service.js';
import type { HandoverDto } from './handover.dto.js';
import { HandoverEntity, toHandover } from './handover.entity.js';

/** Hand-overs that ended longer ago take no place among the most there may be. */
const LATELY_DAYS = 366;

@Injectable()
export class HandoversService extends RowsOfFarm<HandoverEntity, Saved<Handover>, HandoverDto> {
  constructor(
    database: Database,
    private readonly farms: FarmsService,
    private readonly people: PeopleService,
  ) {
    super(database, HandoverEntity, {
      noun: 'hand-over',
      order: ['firstDay', 'id'],
      view: toHandover,
      tells: {
        of: 'hand-over',
        fields: (row) => ({ ...toHandover(row) }),
        name: ({ details: { sitter } }) => sitter ?? 'Nobody from outside',
        ofNew: ['from', 'to'],
      },
      // Days handed over long ago are history.
      count: (_farmId, rows) => {
        const lately = addDays(plainDateAt(Date.now(), 'UTC'), -LATELY_DAYS);
        return Promise.resolve(rows.filter(({ details }) => lately <= details.to).length);
      },
    });
  }

  protected async valuesOf(
    farmId: string,
    { id: _id, version: _version, from, ...details }: HandoverDto,
    { id: ownId = 'new' }: Partial<HandoverEntity> = {},
  ) {
    const farm = await this.farms.findOne(farmId);
    const reader = { units: farm.units, today: plainDateAt(Date.now(), farm.timeZone) };
    const people = await this.people.findAll(farmId);
    const others = await this.findAll(farmId);
    const problems = handoverProblems({ ...details, id: ownId, from }, { people, others, reader });
    // A sheet of days that are over may be changed, but none is made of them.
    if (ownId === 'new') problems.push(...overAlready('to', details.to, reader.today));
    if (0 < problems.length) throw new FieldError(problems);
    return { firstDay: from, details };
  }
}
