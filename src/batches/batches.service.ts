import { Injectable } from '@nestjs/common';
import { In, IsNull } from 'typeorm';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import { HEAD_CHANGES } from '../../shared/farm/head-count.js';
import type { Saved } from '../../shared/farm/saved.js';
import { cameTooEarly } from '../../shared/plan/came-too-early.js';
import { isHistory, planningDay } from '../../shared/plan/planning-day.js';
import { checkBatch, unknownPaddock } from '../../shared/plan/check-batch.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { RowsOfFarm } from '../rows/rows-of-farm.js';
import { Database } from '../database/database.js';
import { FacilitiesService } from '../facilities/facilities.service.js';
import { FarmsService } from '../farms/farms.service.js';
import { PaddockEntity } from '../paddocks/paddock.entity.js';
import { TablesService } from '../reference/tables.service.js';
import { ToldFactEntity } from '../told/told-fact.entity.js';
import type { BatchDto } from './batch.dto.js';
import { BatchEntity, toBatch } from './batch.entity.js';
import { tellsOfBatch } from './tells-of-batch.js';

@Injectable()
export class BatchesService extends RowsOfFarm<BatchEntity, Saved<Batch>, BatchDto> {
  constructor(
    database: Database,
    private readonly farms: FarmsService,
    private readonly facilities: FacilitiesService,
    private readonly tables: TablesService,
  ) {
    super(database, BatchEntity, {
      noun: 'batch',
      order: ['arrivalDate', 'name', 'id'],
      tells: tellsOfBatch,
      view: toBatch,
      // Batches of long ago are history.
      count: (_farmId, rows) => {
        const today = plainDateAt(Date.now(), 'UTC');
        return Promise.resolve(rows.filter((row) => !isHistory(toBatch(row), today)).length);
      },
    });
  }

  protected async valuesOf(farmId: string, sent: BatchDto, before?: BatchEntity) {
    await this.check(farmId, sent, before?.arrivalDate);
    await this.checkGround(farmId, sent);
    if (before) await this.refuseTooEarly(farmId, before, sent.arrivalDate);
    const { id: _id, version: _version, name, arrivalDate, ...details } = sent;
    return { name, arrivalDate, details };
  }

  /** Birds that are still waited for are moved to no day long ago, by whichever form. */
  private async refuseTooEarly(farmId: string, before: BatchEntity, to: string): Promise<void> {
    const { timeZone } = await this.farms.findOne(farmId);
    const today = plainDateAt(Date.now(), timeZone);
    const problem = cameTooEarly({ to, from: before.arrivalDate, today });
    if (!problem) return;
    const told = { farmId, about: before.id, kind: In([...HEAD_CHANGES]), takenBackAt: IsNull() };
    if (await this.database.manager.existsBy(ToldFactEntity, told)) return;
    throw new FieldError([problem]);
  }

  /** A paddock for its birds is one of the farm's. */
  private async checkGround(farmId: string, batch: Batch): Promise<void> {
    if (batch.grassPaddockId === undefined) return;
    const select = { id: true } as const;
    const paddocks = await this.database.manager.find(PaddockEntity, { where: { farmId }, select });
    const problems = unknownPaddock(
      batch,
      paddocks.map(({ id }) => id),
    );
    if (0 < problems.length) throw new FieldError(problems);
  }

  /** A batch that could not be planned is not saved either; one that came long ago may be changed. */
  private async check(farmId: string, batch: Batch, cameOn?: string): Promise<void> {
    const farm = await this.farms.findOne(farmId);
    const facilities = await this.facilities.findAll(farmId);
    const { tables } = this.tables;
    const climate = climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
    );
    const today = plainDateAt(Date.now(), farm.timeZone);
    try {
      checkBatch({
        farm,
        climate,
        facilities,
        products: [],
        people: [],
        batch,
        occupied: [],
        packed: [],
        tables,
        today: batch.arrivalDate === cameOn ? planningDay(batch, today) : today,
      });
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      // Here the batch is the whole body, so its fields stand by themselves.
      throw new FieldError(
        error.problems.map((p) => ({ ...p, field: p.field.replace(/^batch\./, '') })),
      );
    }
  }
}
