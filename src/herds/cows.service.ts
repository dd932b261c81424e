import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { Saved } from '../../shared/farm/saved.js';
import { cowProblems } from '../../shared/plan/pasture/check-cows.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { TablesService } from '../reference/tables.service.js';
import { OwnedRows } from '../rows/owned-rows.js';
import type { CowDto } from './cow.dto.js';
import { CowEntity, toCow } from './cow.entity.js';
import { HerdsService } from './herds.service.js';

/** Cows with a name, each one of the head of a herd. */
@Injectable()
export class CowsService {
  private readonly rows: OwnedRows<CowEntity>;

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly herds: HerdsService,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(database, CowEntity, {
      noun: 'cow',
      order: { name: 'ASC', id: 'ASC' },
      view: toCow,
    });
  }

  create(farmId: string, dto: CowDto): Promise<Saved<Cow>> {
    return this.database.write(farmId, async () =>
      toCow(await this.rows.create(farmId, await this.valuesOf(farmId, dto))),
    );
  }

  async findAll(farmId: string): Promise<Saved<Cow>[]> {
    return (await this.rows.findAll(farmId)).map(toCow);
  }

  async findOne(farmId: string, id: string): Promise<Saved<Cow>> {
    return toCow(await this.rows.findOne(farmId, id));
  }

  update(farmId: string, id: string, dto: CowDto, expected?: Expected): Promise<Saved<Cow>> {
    return this.database.write(farmId, async () => {
      await this.rows.findOne(farmId, id);
      const values = await this.valuesOf(farmId, dto, id);
      return toCow(await this.rows.update(farmId, id, values, expected));
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }

  private async valuesOf(
    farmId: string,
    { id: _id, version: _version, name, herdId, classId, ...details }: CowDto,
    ownId = 'new',
  ): Promise<Pick<CowEntity, 'name' | 'herdId' | 'classId' | 'details'>> {
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
