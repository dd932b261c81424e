import { Injectable, NotFoundException } from '@nestjs/common';
import type { GrassReading } from '../../shared/farm/paddock.js';
import { withHeightsLeft } from '../../shared/farm/heights-left.js';
import { readingsOf, type HeightRead } from '../../shared/farm/told-fact.js';
import { ConflictError } from '../common/expected-version.js';
import { FarmsService } from '../farms/farms.service.js';
import { PaddocksService } from '../paddocks/paddocks.service.js';
import { ToldService } from '../told/told.service.js';
import type { WalkDto } from './grass-reading.dto.js';

/** Heights read in paddocks: facts that are told like any others. */
@Injectable()
export class GrassReadingsService {
  constructor(
    private readonly farms: FarmsService,
    private readonly paddocks: PaddocksService,
    private readonly told: ToldService,
  ) {}

  /**
   * Readings of the paddocks there are, the oldest first; those of paddocks long gone are history.
   *
   * @param at the farm's revision, where they may have been read before
   */
  async findAll(farmId: string, since: string = EVER, at?: number): Promise<GrassReading[]> {
    await this.farms.findOne(farmId);
    const known = new Set(await this.paddocks.idsOf(farmId));
    const facts =
      at === undefined
        ? await this.told.factsSince(farmId, since, ['grass-reading'])
        : await this.told.heightsSince(farmId, since, at);
    const moves = await this.told.movesOf(farmId, at);
    return withHeightsLeft(readingsOf(facts), moves).filter(
      ({ paddockId, date }) => known.has(paddockId) && since <= date,
    );
  }

  /** Keeps the heights of one walk; all of them or none. */
  async walk(farmId: string, { readings }: WalkDto): Promise<GrassReading[]> {
    const last = new Map(readings.map((r, k) => [`${r.paddockId}/${r.date}`, { ...r, k }]));
    const walked = [...last.values()];
    const facts = await this.told.tell(
      farmId,
      walked.map(({ paddockId, date, heightCm, isSure }) => ({
        kind: 'grass-reading',
        about: paddockId,
        on: date,
        details: { heightCm, ...(isSure ? { isSure } : {}) },
      })),
      (k, field) => `readings.${walked[k]!.k}.${FIELDS[field] ?? field}`,
    );
    return readingsOf(facts as HeightRead[]);
  }

  /**
   * Takes a reading back, and whatever was read there on that day before.
   *
   * @throws ConflictError when it was read again since: that reading would go with it unseen
   */
  async remove(farmId: string, id: string): Promise<void> {
    await this.told.telling(farmId, async () => {
      const facts = await this.told.factsOf(farmId, 'grass-reading');
      const meant = facts.find((fact) => fact.id === id);
      if (!meant) {
        throw new NotFoundException(`This farm has no reading with the id "${id.slice(0, 64)}".`);
      }
      const newest = readingsOf(facts).find(
        ({ paddockId, date }) => paddockId === meant.about && date === meant.on,
      );
      if (newest && newest.id !== id) throw new ConflictError(newest);
      await this.told.takeBackAbout(
        farmId,
        'grass-reading',
        ({ about, on }) => about === meant.about && on === meant.on,
      );
    });
  }
}

/** Before every day that was told of. */
const EVER = '';

/** What the fields of a fact are called in a walk. */
const FIELDS: Readonly<Record<string, string>> = {
  about: 'paddockId',
  on: 'date',
  'details.heightCm': 'heightCm',
  'details.isSure': 'isSure',
};
