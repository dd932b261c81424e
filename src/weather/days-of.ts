import { setImmediate as nextTurn } from 'node:timers/promises';
import type { EntityManager } from 'typeorm';
import type { DailyWeather } from '../../shared/weather/climate.js';
import { WeatherDayEntity, type WeatherKind } from './weather-day.entity.js';

const ROWS_AT_ONCE = 4000;
const BEFORE_ALL = '0001-01-01';

/**
 * A farm's days of weather after a date, oldest first. Thirty years are read in a few parts, so that
 * other requests are answered between them, and as plain values, which takes a third of the time.
 */
export async function daysOf(
  manager: EntityManager,
  farmId: string,
  kind: WeatherKind,
  after = BEFORE_ALL,
): Promise<DailyWeather[]> {
  const days: DailyWeather[] = [];
  for (let last = after; ; last = days.at(-1)!.date) {
    const read = await manager
      .getRepository(WeatherDayEntity)
      .createQueryBuilder('day')
      .select('CAST(day.date AS text)', 'date')
      .addSelect('day.minC', 'minC')
      .addSelect('day.maxC', 'maxC')
      .addSelect('day.rainMm', 'rainMm')
      .where('day.farmId = :farmId AND day.kind = :kind AND day.date > :last', {
        farmId,
        kind,
        last,
      })
      .orderBy('day.date', 'ASC')
      .limit(ROWS_AT_ONCE)
      .getRawMany<DailyWeather>();
    days.push(...read);
    if (read.length < ROWS_AT_ONCE) return days;
    await nextTurn();
  }
}
