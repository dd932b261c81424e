import {
  BadGatewayException,
  ConflictException,
  Injectable,
  Logger,
  type OnApplicationBootstrap,
  type OnApplicationShutdown,
} from '@nestjs/common';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { In } from 'typeorm';
import { addDays, plainDateAt, yearOf } from '../../shared/calendar/plain-date.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import {
  climateFromMonthlyMeans,
  FEWEST_CLIMATE_DAYS,
  type Climate,
  type DailyWeather,
} from '../../shared/weather/climate.js';
import { Database } from '../database/database.js';
import { FarmEntity } from '../farms/farm.entity.js';
import { FarmsService } from '../farms/farms.service.js';
import { TablesService } from '../reference/tables.service.js';
import type { FarmView } from '../farms/farm.dto.js';
import type { ImportedDay } from '../weather-files/daily-csv.js';
import { checkedForecast, type ForecastDto } from './forecast.dto.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';
import { OpenWeatherClient, WeatherServiceError } from './open-weather.client.js';
import { daysOf } from './days-of.js';
import { WeatherDayEntity, type WeatherKind } from './weather-day.entity.js';
import type { WeatherView } from './weather-view.js';

/** A farm's history as kept: how many days of each kind. */
type DayCounts = Readonly<Record<WeatherKind, number>>;

const HISTORY_YEARS = 30;
/** The archive lags behind by about five days. */
const ARCHIVE_LAG_DAYS = 6;
const REFRESH_MS = 6 * 3600 * 1000;
const ROWS_AT_ONCE = 200;
const RECENT_DAYS = 366;

@Injectable()
export class WeatherService implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(WeatherService.name);
  private timer: NodeJS.Timeout | undefined;
  /** Climates by the daily record they come from: a change of anything else leaves them as they are. */
  private readonly climates = new SharedAnswers<Climate>(20);
  /** How often each farm's weather was replaced since the start. */
  private readonly replaced = new Map<string, number>();

  constructor(
    private readonly database: Database,
    private readonly farms: FarmsService,
    private readonly client: OpenWeatherClient,
    private readonly tables: TablesService,
    private readonly pool: WorkPool,
  ) {}

  /** Forecasts are renewed in the background; a plan only ever reads the database. */
  onApplicationBootstrap(): void {
    const refresh = (): void =>
      void this.refreshForecasts().catch((error: unknown) => this.logger.warn(String(error)));
    this.timer = setInterval(refresh, REFRESH_MS);
    this.timer.unref();
    // A program that is opened an hour a day would never reach the interval.
    refresh();
  }

  onApplicationShutdown(): void {
    clearInterval(this.timer);
  }

  async view(farmId: string): Promise<WeatherView> {
    const farm = await this.farms.findRow(farmId);
    const counts = await this.counts(farmId);
    const inUse = wayInUse(counts);
    return {
      inUse,
      label: labelOf(inUse, counts, farm),
      fetchAllowed: farm.weatherFetch,
      fetchedDays: counts.fetched,
      csvDays: counts.csv,
      forecastDays: counts.forecast,
    };
  }

  async allowFetch(farmId: string, allowed: boolean): Promise<WeatherView> {
    await this.database.write(farmId, async (manager) => {
      await manager.update(FarmEntity, { id: farmId }, { weatherFetch: allowed });
    });
    return this.view(farmId);
  }

  /** Thirty years of history and the forecast, kept in the database. Nothing changes when it fails. */
  async fetch(farmId: string): Promise<WeatherView> {
    const farm = await this.farms.findRow(farmId);
    if (!farm.weatherFetch)
      throw new ConflictException(
        'Fetching weather is switched off for this farm. Switch it on first: the farm’s coordinates are sent to the weather service.',
      );
    const today = plainDateAt(Date.now(), farm.timeZone);
    try {
      const history = await this.client.history(
        farm,
        `${yearOf(today) - HISTORY_YEARS}-01-01`,
        addDays(today, -ARCHIVE_LAG_DAYS),
      );
      if (history.length < FEWEST_CLIMATE_DAYS)
        throw new WeatherServiceError(
          `The weather service gave only ${history.length} days; ${FEWEST_CLIMATE_DAYS} are needed.`,
        );
      const forecast = await this.client.forecast(farm);
      await this.keep(farmId, { fetched: history, forecast });
    } catch (error) {
      if (!(error instanceof WeatherServiceError)) throw error;
      const { label } = await this.view(farmId);
      throw new BadGatewayException(
        `${error.message} Nothing was changed; plans go on with: ${label}.`,
      );
    }
    return this.view(farmId);
  }

  async importCsv(farmId: string, text: unknown): Promise<WeatherView> {
    const farm = await this.farms.findRow(farmId);
    if (typeof text !== 'string' || text.trim() === '') {
      throw new FieldError([
        {
          field: 'csv',
          code: 'missing',
          given: undefined,
          fix: 'Send the file as the body, with the content type text/csv.',
        },
      ]);
    }
    const today = plainDateAt(Date.now(), farm.timeZone);
    await this.keep(farmId, { csv: await this.pool.run('parseDailyCsv', { text, today }) });
    return this.view(farmId);
  }

  /** Replaces the forecast by one that was typed, or read from a file. An empty list forgets it. */
  async setForecast(farmId: string, given: ForecastDto | string): Promise<WeatherView> {
    const farm = await this.farms.findRow(farmId);
    const today = plainDateAt(Date.now(), farm.timeZone);
    const days =
      typeof given === 'string'
        ? await this.pool.run('parseForecastCsv', { text: given, today })
        : checkedForecast(given, today);
    await this.keep(farmId, { forecast: days });
    return this.view(farmId);
  }

  /** Forgets imported or fetched weather. */
  async forget(farmId: string, kind: 'csv' | 'fetched'): Promise<WeatherView> {
    await this.keep(farmId, kind === 'csv' ? { csv: [] } : { fetched: [], forecast: [] });
    return this.view(farmId);
  }

  /** The daily record in use, oldest first; empty where only monthly means are known. */
  async historyOf(farmId: string): Promise<DailyWeather[]> {
    const way = wayInUse(await this.counts(farmId));
    return way === 'monthly-means' ? [] : daysOf(this.database.manager, farmId, way);
  }

  /** The climate a farm's plans use. Callers keep it by the farm's revision. */
  async climateOf(farm: FarmView): Promise<Climate> {
    const counts = await this.counts(farm.id);
    const way = wayInUse(counts);
    const forecast = await daysOf(this.database.manager, farm.id, 'forecast');
    if (way === 'monthly-means') {
      const base = climateFromMonthlyMeans(
        farm.monthlyMinC,
        farm.monthlyMaxC,
        this.tables.tables.heat.coldNightMarginK.value,
        farm.monthlyRainMm,
      );
      const own = isEstimated(farm) ? { label: ESTIMATE, isEstimate: true } : {};
      return { ...base, ...own, ...(forecast.length === 0 ? {} : { forecast }) };
    }
    const base = await this.climateOfRecord(farm, way, counts);
    // A grazing season is followed from its start, so a year of measured days is enough.
    const since = addDays(plainDateAt(Date.now(), farm.timeZone), -RECENT_DAYS);
    const recent = await daysOf(this.database.manager, farm.id, way, addDays(since, -1));
    return {
      ...base,
      ...(recent.length === 0 ? {} : { recent }),
      ...(forecast.length === 0 ? {} : { forecast }),
    };
  }

  private climateOfRecord(
    { id, latitudeDeg }: FarmView,
    way: 'fetched' | 'csv',
    counts: DayCounts,
  ): Promise<Climate> {
    // The halves of the year change places at the equator.
    const half = latitudeDeg < 0 ? 'south' : 'north';
    const key = `${id}/${way}/${counts[way]}/${half}/${this.replaced.get(id) ?? 0}`;
    return this.climates.of(key, async () => {
      const history = await daysOf(this.database.manager, id, way);
      const label = LABELS[way](counts);
      return this.pool.run('climateFromDaily', { history, latitudeDeg, way, label });
    });
  }

  private async refreshForecasts(): Promise<void> {
    for (const farm of await this.database.manager
      .getRepository(FarmEntity)
      .findBy({ weatherFetch: true })) {
      try {
        await this.keep(farm.id, { forecast: await this.client.forecast(farm) });
      } catch (error) {
        this.logger.warn(
          `Forecast of ${farm.name}: ${error instanceof Error ? error.message : String(error)}`,
        );
      }
    }
  }

  /** Replaces days of some kinds, all or nothing. */
  private async keep(
    farmId: string,
    byKind: Partial<Record<WeatherKind, readonly ImportedDay[]>>,
  ): Promise<void> {
    await this.database.write(farmId, async (manager) => {
      const rows = manager.getRepository(WeatherDayEntity);
      await rows.delete({ farmId, kind: In(Object.keys(byKind)) });
      for (const [kind, days] of Object.entries(byKind)) {
        for (let i = 0; i < days.length; i += ROWS_AT_ONCE) {
          // Writing to a file never waits, so others are let in by hand.
          await nextTurn();
          await rows.insert(
            days
              .slice(i, i + ROWS_AT_ONCE)
              .map((day) => ({ ...day, farmId, kind: kind as WeatherKind })),
          );
        }
      }
    });
    this.replaced.set(farmId, 1 + (this.replaced.get(farmId) ?? 0));
  }

  private async counts(farmId: string): Promise<DayCounts> {
    const rows = await this.database.manager
      .getRepository(WeatherDayEntity)
      .createQueryBuilder('day')
      .select('day.kind', 'kind')
      .addSelect('COUNT(*)', 'days')
      .where('day.farmId = :farmId', { farmId })
      .groupBy('day.kind')
      .getRawMany<{ kind: WeatherKind; days: string | number }>();
    const counts = { fetched: 0, csv: 0, forecast: 0 };
    for (const { kind, days } of rows) counts[kind] = Number(days);
    return counts;
  }
}

/** A file the household brought wins over fetched weather, and both over typed means. */
function wayInUse({ csv, fetched }: DayCounts): Climate['way'] {
  if (FEWEST_CLIMATE_DAYS <= csv) return 'csv';
  return FEWEST_CLIMATE_DAYS <= fetched ? 'fetched' : 'monthly-means';
}

const years = (days: number): string => `${Math.round(days / 365.25)} years`;
const ESTIMATE = 'An estimate from the farm’s coordinates and height';
const isEstimated = ({ estimated }: { estimated?: readonly string[] | null }): boolean =>
  estimated?.some((field) => field === 'monthlyMinC' || field === 'monthlyMaxC') ?? false;
const labelOf = (way: Climate['way'], counts: DayCounts, farm: FarmEntity): string =>
  way === 'monthly-means' && isEstimated(farm) ? ESTIMATE : LABELS[way](counts);
const LABELS: Record<Climate['way'], (counts: DayCounts) => string> = {
  csv: ({ csv }) => `Your daily file, ${years(csv)}`,
  fetched: ({ fetched }) => `Open-Meteo daily archive, ${years(fetched)}`,
  'monthly-means': () => 'Typed monthly averages',
};
