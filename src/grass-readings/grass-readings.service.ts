import { Injectable, NotFoundException } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { GrassReading } from '../../shared/farm/paddock.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { isId } from '../common/ids.js';
import { Database } from '../database/database.js';
import { FarmsService } from '../farms/farms.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import type { GrassReadingDto, WalkDto } from './grass-reading.dto.js';
import { GrassReadingEntity, toReading } from './grass-reading.entity.js';

/** Readings kept of a farm: ten years of weekly walks over twenty paddocks. */
const MOST_READINGS = 12_000;

@Injectable()
export class GrassReadingsService {
  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly paddocks: PaddocksService,
  ) {}

  /** Readings of a farm, the oldest first. */
  async findAll(farmId: string): Promise<GrassReading[]> {
    await this.farms.findOne(farmId);
    const rows = await this.database.manager
      .getRepository(GrassReadingEntity)
      .find({ where: { farmId }, order: { date: 'ASC', id: 'ASC' } });
    return rows.map(toReading);
  }

  /** Keeps the heights of one walk; all of them or none. */
  async walk(farmId: string, { readings }: WalkDto): Promise<GrassReading[]> {
    return this.database.write(farmId, async (manager) => {
      const farm = await this.farms.findOne(farmId);
      const known = new Set((await this.paddocks.findAll(farmId)).map((p) => p.id));
      const today = plainDateAt(Date.now(), farm.timeZone);
      const problems = readings.flatMap((r, i) => problemsOf(r, i, known, today));
      if (0 < problems.length) throw new FieldError(problems);
      const rows = manager.getRepository(GrassReadingEntity);
      if (MOST_READINGS < (await rows.countBy({ farmId })) + readings.length) {
        throw new FieldError([
          {
            field: 'readings',
            code: 'out-of-bounds',
            given: readings.length,
            max: MOST_READINGS,
            fix: 'Delete readings of earlier years first.',
          },
        ]);
      }
      for (const { paddockId, date } of readings) await rows.delete({ farmId, paddockId, date });
      const last = new Map(readings.map((r) => [`${r.paddockId}/${r.date}`, r]));
      return (
        await rows.save([...last.values()].map((r) => ({ ...r, id: randomUUID(), farmId })))
      ).map(toReading);
    });
  }

  async remove(farmId: string, id: string): Promise<void> {
    const missing = new NotFoundException(
      `This farm has no reading with the id "${id.slice(0, 64)}".`,
    );
    if (!isId(id)) throw missing;
    await this.database.write(farmId, async (manager) => {
      const { affected } = await manager.delete(GrassReadingEntity, { id, farmId });
      if (affected === 0) throw missing;
    });
  }
}

function problemsOf(
  { paddockId, date }: GrassReadingDto,
  i: number,
  known: ReadonlySet<string>,
  today: string,
): FieldProblem[] {
  return [
    ...(known.has(paddockId)
      ? []
      : [
          {
            field: `readings.${i}.paddockId`,
            code: 'not-allowed' as const,
            given: paddockId,
            allowed: [...known],
            fix: 'Name a paddock of this farm.',
          },
        ]),
    ...(date <= today
      ? []
      : [
          {
            field: `readings.${i}.date`,
            code: 'out-of-bounds' as const,
            given: date,
            max: today,
            fix: 'A reading cannot lie in the future. Give the day it was taken.',
          },
        ]),
  ];
}
