import { Injectable } from '@nestjs/common';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { Saved } from '../../shared/farm/saved.js';
import { herdProblems } from '../../shared/plan/pasture/check-pasture.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Expected } from '../common/expected-version.js';
import { OwnedRows } from '../common/owned-rows.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { TablesService } from '../reference/tables.service.js';
import type { HerdDto, MovedDto } from './herd.dto.js';
import { HerdEntity, toHerd } from './herd.entity.js';

@Injectable()
export class HerdsService {
  private readonly rows: OwnedRows<HerdEntity>;

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly paddocks: PaddocksService,
    private readonly tables: TablesService,
  ) {
    this.rows = new OwnedRows(database, HerdEntity, {
      noun: 'herd',
      order: { name: 'ASC', id: 'ASC' },
      view: toHerd,
    });
  }

  create(farmId: string, dto: HerdDto): Promise<Saved<Herd>> {
    return this.database.write(farmId, async () =>
      toHerd(await this.rows.create(farmId, await this.valuesOf(farmId, dto))),
    );
  }

  async findAll(farmId: string): Promise<Saved<Herd>[]> {
    return (await this.rows.findAll(farmId)).map(toHerd);
  }

  async findOne(farmId: string, id: string): Promise<Saved<Herd>> {
    return toHerd(await this.rows.findOne(farmId, id));
  }

  update(farmId: string, id: string, dto: HerdDto, expected?: Expected): Promise<Saved<Herd>> {
    return this.database.write(farmId, async () => {
      const values = await this.valuesOf(farmId, dto, id);
      return toHerd(await this.rows.update(farmId, id, values, expected));
    });
  }

  remove(farmId: string, id: string, expected?: Expected): Promise<void> {
    return this.rows.remove(farmId, id, expected);
  }

  /** Notes where a herd really went: it stands there now, and the paddock it left starts to rest. */
  async moved(farmId: string, id: string, { paddockId, on }: MovedDto): Promise<Saved<Herd>> {
    const farm = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    if (today < on) {
      throw new FieldError([
        {
          field: 'on',
          code: 'out-of-bounds',
          given: on,
          max: today,
          fix: 'Give the day on which they were moved; a move to come is in the plan.',
        },
      ]);
    }
    return this.database.write(farmId, async (manager) => {
      await this.paddocks.findOne(farmId, paddockId);
      await this.checkPlace(farmId, paddockId, id, 'paddockId');
      const row = await this.rows.findOne(farmId, id);
      const left = row.details.inPaddockId;
      if (left !== undefined && left !== paddockId) {
        const paddock = await manager.findOneBy(PaddockEntity, { id: left, farmId });
        if (paddock) {
          paddock.details = { ...paddock.details, lastGrazedOn: addDays(on, -1) };
          await manager.save(paddock);
        }
      }
      row.details = { ...row.details, inPaddockId: paddockId, inSince: on };
      return toHerd(await manager.save(row));
    });
  }

  private async valuesOf(
    farmId: string,
    { id: _id, version: _version, name, ...details }: HerdDto,
    ownId?: string,
  ): Promise<{ name: string; details: HerdEntity['details'] }> {
    const problems = herdProblems({ ...details, id: 'new', name }, this.tables.tables);
    if (0 < problems.length) throw new FieldError(problems);
    const { inPaddockId } = details;
    if (inPaddockId !== undefined) {
      await this.paddocks.findOne(farmId, inPaddockId);
      await this.checkPlace(farmId, inPaddockId, ownId, 'inPaddockId');
    }
    return { name, details };
  }

  private async checkPlace(
    farmId: string,
    paddockId: string,
    ownId: string | undefined,
    field: string,
  ): Promise<void> {
    const other = (await this.findAll(farmId)).find(
      (herd) => herd.inPaddockId === paddockId && herd.id !== ownId,
    );
    if (!other) return;
    throw new FieldError([
      {
        field,
        code: 'conflict',
        given: paddockId,
        fix: `${other.name} stands there. Move it first, or join the herds.`,
      },
    ]);
  }
}
