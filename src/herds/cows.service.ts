import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { Saved } from '../../shared/farm/saved.js';
import { cowProblems } from '../../shared/plan/pasture/check-cows.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { TablesService } from '../reference/tables.service.js';
import { RowsOfFarm } from '../rows/rows-of-farm.js';
import type { CowDto } from './cow.dto.js';
import { CowEntity, toCow } from './cow.entity.js';
import { COWS_TELL } from './cows-tell.js';
import { HerdsService } from './herds.service.js';

/** Cows with a name, each one of the head of a herd. */
@Injectable()
export class CowsService extends RowsOfFarm<CowEntity, Saved<Cow>, CowDto> {
  constructor(
    database: Database,
    private readonly farms: FarmsService,
    private readonly herds: HerdsService,
    private readonly tables: TablesService,
  ) {
    super(database, CowEntity, {
      noun: 'cow',
      order: ['name', 'id'],
      tells: COWS_TELL,
      view: toCow,
    });
  }

  protected async valuesOf(
    farmId: string,
    { id: _id, version: _version, name, herdId, classId, ...details }: CowDto,
    { id: ownId = 'new' }: Partial<CowEntity> = {},
  ) {
    const cow = { ...details, id: ownId, name, herdId, classId };
    const others = (await this.findAll(farmId)).filter(({ id }) => id !== ownId);
    const problems = cowProblems(cow, {
      tables: this.tables.tables,
      herds: await this.herds.findAll(farmId),
      // Who was named first keeps her place.
      cows: [...others, cow],
      today: plainDateAt(Date.now(), (await this.farms.findOne(farmId)).timeZone),
    });
    if (0 < problems.length) throw new FieldError(problems);
    return { name, herdId, classId, details };
  }
}
