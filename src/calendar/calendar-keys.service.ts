import { ForbiddenException, Inject, Injectable } from '@nestjs/common';
import { randomBytes, timingSafeEqual } from 'node:crypto';
import { IsNull, type FindOptionsWhere } from 'typeorm';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { FarmsService } from '../farms/farms.service.js';
import { isLoopback, type Settings } from '../settings/settings.js';
import { SETTINGS } from '../settings/settings.module.js';

/** Where a farm's calendar is found. */
export interface CalendarAddress {
  /** Path of the feed with its key, to which `person` can be added. */
  readonly path: string;
  /** Whether the feed is given only to those who know the key. */
  readonly isKeyNeeded: boolean;
}

/** 256 bits, so that nobody finds a calendar by trying. */
const KEY_BYTES = 32;

/**
 * Keys of calendar addresses. Calendar programs send no password, so where others of the network
 * can ask, the address itself is the secret. A key is made when an address is first asked for.
 */
@Injectable()
export class CalendarKeys {
  private readonly isKeyNeeded: boolean;

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    @Inject(SETTINGS) settings: Settings,
  ) {
    this.isKeyNeeded = !isLoopback(settings.host);
  }

  async addressOf(farmId: string): Promise<CalendarAddress> {
    const farm = await this.farms.findRow(farmId);
    if (this.isKeyNeeded && !farm.calendarKey) {
      // Of two who ask at once the first makes the key, and both are given it.
      await this.keep(farmId, { id: farmId, calendarKey: IsNull() });
    }
    return this.address(farmId);
  }

  /** Makes a key anew: whoever knows only the old address is given nothing any more. */
  async renew(farmId: string): Promise<CalendarAddress> {
    await this.farms.findRow(farmId);
    await this.keep(farmId, { id: farmId });
    return this.address(farmId);
  }

  /** @throws ForbiddenException when a key is needed and another, or none, is given */
  async check(farmId: string, given: string | undefined): Promise<void> {
    const { calendarKey } = await this.farms.findRow(farmId);
    if (!this.isKeyNeeded || isSame(calendarKey ?? '', given)) return;
    throw new ForbiddenException(
      'This address of the calendar does not hold, or no longer. Copy the new one from the page, under Work, and subscribe to that.',
    );
  }

  private async address(farmId: string): Promise<CalendarAddress> {
    const { calendarKey } = await this.farms.findRow(farmId);
    const key = calendarKey ? `?key=${calendarKey}` : '';
    return { path: `/api/farms/${farmId}/calendar.ics${key}`, isKeyNeeded: this.isKeyNeeded };
  }

  private async keep(farmId: string, where: FindOptionsWhere<FarmEntity>): Promise<void> {
    await this.database.write(
      farmId,
      (manager) => manager.update(FarmEntity, where, { calendarKey: newKey() }),
      { raises: false },
    );
  }
}

const newKey = (): string => randomBytes(KEY_BYTES).toString('base64url');

/** Compares in a time that does not tell how much of the key was right. */
function isSame(key: string, given: unknown): boolean {
  if (key === '' || typeof given !== 'string') return false;
  const [a, b] = [Buffer.from(key), Buffer.from(given)];
  return a.length === b.length && timingSafeEqual(a, b);
}
