import { Injectable } from '@nestjs/common';
import { plainDateAt } from '../../shared/calendar/plain-date.js';
import {
  byHerd,
  grazedBy,
  lastGrazedOn,
  placeOf,
  type Grazed,
} from '../../shared/farm/herd-places.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';
import type { Saved } from '../../shared/farm/saved.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { HerdEntity } from '../herds/herd.entity.js';
import { ToldService } from '../told/told.service.js';
import { toPaddock, type PaddockEntity } from './paddock.entity.js';

/** When paddocks were grazed: by what was typed, and by the moves of herds that were told. */
@Injectable()
export class GrazingDays {
  constructor(
    private readonly database: Database,
    private readonly told: ToldService,
  ) {}

  /** What herds have grazed and left, by all moves where these are read already. */
  async on(farmId: string, moves?: readonly HerdMove[]): Promise<Grazed[]> {
    return grazedBy(moves ?? (await this.told.movesOf(farmId)));
  }

  /** Herds in paddocks that go stand nowhere. */
  async leave(farmId: string, paddockIds: readonly string[]): Promise<void> {
    const moves = byHerd(await this.told.movesOf(farmId));
    const going = new Set(paddockIds);
    const herds = await this.database.manager.findBy(HerdEntity, { farmId });
    const standing = herds.filter(
      ({ id }) => placeOf(moves.get(id) ?? [], going).inPaddockId !== undefined,
    );
    const on = await this.todayOn(farmId);
    const details = { isTyped: true, isSinceUnknown: true };
    await this.told.tell(
      farmId,
      standing.map(({ id }) => ({ kind: 'herd-move', about: id, on, details })),
    );
  }

  /** What is said to have happened lies behind us. */
  async refuseFuture(farmId: string, { lastGrazedOn: given }: Partial<Paddock>): Promise<void> {
    if (given === undefined) return;
    const max = await this.todayOn(farmId);
    if (given <= max) return;
    throw new FieldError([
      {
        field: 'lastGrazedOn',
        code: 'out-of-bounds',
        given,
        max,
        fix: 'This has not happened yet. Give the day on which it did, or leave it out.',
      },
    ]);
  }

  private async todayOn(farmId: string): Promise<string> {
    const { timeZone } = await this.database.manager.findOneByOrFail(FarmEntity, { id: farmId });
    return plainDateAt(Date.now(), timeZone);
  }
}

/** A paddock as the API returns it: when it was last grazed follows from the moves as well. */
export function viewOf(row: PaddockEntity, grazed: readonly Grazed[]): Saved<Paddock> {
  const { lastGrazedOn: typed, ...paddock } = toPaddock(row);
  const last = lastGrazedOn(row.id, typed, row.details.lastGrazedTypedAt, grazed);
  return { ...paddock, ...(last === undefined ? {} : { lastGrazedOn: last }) };
}

/** Details to keep: a day that is only shown, because a move says so, is not thereby typed. */
export function withTypedDay(
  sent: PaddockEntity['details'],
  before: PaddockEntity,
  grazed: readonly Grazed[],
): PaddockEntity['details'] {
  if (sent.lastGrazedOn !== viewOf(before, grazed).lastGrazedOn) {
    return { ...sent, lastGrazedTypedAt: new Date().toISOString() };
  }
  const { lastGrazedOn: _shown, ...rest } = sent;
  const { lastGrazedOn: typed, lastGrazedTypedAt } = before.details;
  return {
    ...rest,
    ...(typed === undefined ? {} : { lastGrazedOn: typed }),
    ...(lastGrazedTypedAt === undefined ? {} : { lastGrazedTypedAt }),
  };
}
