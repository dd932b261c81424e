import { Injectable } from '@nestjs/common';
import { isPlainDate, isTimeZone } from '../../shared/calendar/plain-date.js';
import { AIR_C, type Bounds } from '../../shared/farm/bounds.js';
import { farmFields } from '../../shared/farm/farm.js';
import type { ImportedDay } from '../weather-files/daily-csv.js';

/** The service did not give usable weather. The message says what happened and what goes on. */
export class WeatherServiceError extends Error {}

export interface WeatherPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

const DAILY = 'temperature_2m_max,temperature_2m_min,precipitation_sum';
const FORECAST_DAYS = 16;
/** At most this share of the days asked for may be missing. */
const MOST_MISSING = 0.1;

/** What the service answers, as documented: parallel arrays, one entry a day. */
interface DailyAnswer {
  readonly daily_units?: Record<string, string>;
  readonly daily?: {
    readonly time?: unknown[];
    readonly temperature_2m_max?: unknown[];
    readonly temperature_2m_min?: unknown[];
    readonly precipitation_sum?: unknown[];
  };
}

/** A place as the service finds it by name. */
export interface FoundPlace {
  readonly name: string;
  readonly within?: string;
  /** Two letters. */
  readonly country?: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM?: number;
  readonly population?: number;
  readonly timeZone?: string;
}

const PLACES_AT_ONCE = 12;

/** Reads weather and places from Open-Meteo, which needs no key. */
@Injectable()
export class OpenWeatherClient {
  private readonly archiveUrl =
    process.env['WEATHER_ARCHIVE_URL'] ?? 'https://archive-api.open-meteo.com/v1/archive';
  private readonly forecastUrl =
    process.env['WEATHER_FORECAST_URL'] ?? 'https://api.open-meteo.com/v1/forecast';
  private readonly placesUrl =
    process.env['WEATHER_PLACES_URL'] ?? 'https://geocoding-api.open-meteo.com/v1/search';
  private readonly heightUrl =
    process.env['WEATHER_HEIGHT_URL'] ?? 'https://api.open-meteo.com/v1/elevation';
  private readonly timeoutMs = Number(process.env['WEATHER_TIMEOUT_MS'] ?? 20_000);

  async history(place: WeatherPlace, from: string, to: string): Promise<ImportedDay[]> {
    const span = { start_date: from, end_date: to };
    return enough(daysOf(await this.daily(this.archiveUrl, place, span)));
  }

  async forecast(place: WeatherPlace): Promise<ImportedDay[]> {
    return enough(
      daysOf(await this.daily(this.forecastUrl, place, { forecast_days: String(FORECAST_DAYS) })),
    );
  }

  /** Places whose name is, or begins with, a text: villages too. */
  async places(name: string): Promise<FoundPlace[]> {
    const query = { name, count: String(PLACES_AT_ONCE), language: 'en', format: 'json' };
    const { results = [] } = (await this.get<{ results?: unknown }>(this.placesUrl, query)) ?? {};
    if (!Array.isArray(results)) throw notAsDocumented();
    return results.flatMap((each) => placeIn(each as Record<string, unknown> | null) ?? []);
  }

  /** Height of a spot above sea level, m. */
  async elevationM(spot: Pick<WeatherPlace, 'latitudeDeg' | 'longitudeDeg'>): Promise<number> {
    const query = { latitude: String(spot.latitudeDeg), longitude: String(spot.longitudeDeg) };
    const answer = await this.get<{ elevation?: unknown }>(this.heightUrl, query);
    const [height] = Array.isArray(answer?.elevation) ? (answer.elevation as unknown[]) : [];
    if (!isWithin(height, ELEVATION_M)) throw notAsDocumented();
    return height;
  }

  private daily(
    base: string,
    place: WeatherPlace,
    more: Record<string, string>,
  ): Promise<DailyAnswer | null> {
    return this.get<DailyAnswer>(base, {
      latitude: String(place.latitudeDeg),
      longitude: String(place.longitudeDeg),
      timezone: place.timeZone,
      daily: DAILY,
      ...more,
    });
  }

  private async get<Answer>(
    base: string,
    query: Readonly<Record<string, string>>,
  ): Promise<Answer | null> {
    const url = new URL(base);
    for (const [name, value] of Object.entries(query)) url.searchParams.set(name, value);
    let response: Response;
    let text: string;
    try {
      response = await fetch(url, {
        signal: AbortSignal.timeout(this.timeoutMs),
        redirect: 'error',
      });
      text = await response.text();
    } catch (error) {
      const timedOut = error instanceof Error && error.name === 'TimeoutError';
      throw new WeatherServiceError(
        timedOut
          ? `The weather service did not answer within ${this.timeoutMs / 1000} seconds.`
          : 'The weather service could not be reached. Is the network up?',
      );
    }
    if (response.status === 429)
      throw new WeatherServiceError(
        'The weather service asks to wait (429: too many requests). Try again later.',
      );
    if (!response.ok)
      throw new WeatherServiceError(
        `The weather service answered ${response.status}${reasonIn(text)}.`,
      );
    try {
      return JSON.parse(text) as Answer | null;
    } catch {
      throw new WeatherServiceError('The weather service’s answer was cut off. Try again.');
    }
  }
}

interface Reading {
  readonly asked: number;
  readonly days: ImportedDay[];
}

function daysOf(answer: DailyAnswer | null): Reading {
  const { daily, daily_units: units } = answer ?? {};
  const {
    time,
    temperature_2m_max: max,
    temperature_2m_min: min,
    precipitation_sum: rain,
  } = daily ?? {};
  if (
    !Array.isArray(time) ||
    !Array.isArray(max) ||
    !Array.isArray(min) ||
    max.length !== time.length ||
    min.length !== time.length
  ) {
    throw notAsDocumented();
  }
  for (const name of ['temperature_2m_max', 'temperature_2m_min']) {
    if (units?.[name] !== undefined && units[name] !== '°C')
      throw new WeatherServiceError(`The weather service answered in ${units[name]}, not °C.`);
  }
  const days = time.flatMap((date, i): ImportedDay[] => {
    const [minC, maxC, rainMm] = [min[i], max[i], rain?.[i]];
    if (!isPlainDate(date) || !isAir(minC) || !isAir(maxC) || maxC < minC) return []; // a missing day
    return [
      { date, minC, maxC, rainMm: typeof rainMm === 'number' && 0 <= rainMm ? rainMm : null },
    ];
  });
  if (new Set(days.map((day) => day.date)).size < days.length) {
    throw new WeatherServiceError('The weather service sent one day twice.');
  }
  return { asked: time.length, days };
}

const notAsDocumented = (): WeatherServiceError =>
  new WeatherServiceError('The weather service’s answer does not have the documented shape.');

const isWithin = (value: unknown, { min, max }: Bounds): value is number =>
  typeof value === 'number' && min <= value && value <= max;
const isAir = (value: unknown): value is number => isWithin(value, AIR_C);

const { latitudeDeg, longitudeDeg, elevationM } = farmFields.fields;
const ELEVATION_M = elevationM.bounds;

/** One place of an answer; undefined when it cannot be found on a map. */
function placeIn(given: Record<string, unknown> | null): FoundPlace | undefined {
  const { name, admin1, country_code, latitude, longitude, elevation, population, timezone } =
    given ?? {};
  if (!isName(name) || !isWithin(latitude, latitudeDeg.bounds)) return undefined;
  if (!isWithin(longitude, longitudeDeg.bounds)) return undefined;
  return {
    name,
    ...(isName(admin1) ? { within: admin1 } : {}),
    ...(typeof country_code === 'string' && /^[A-Z]{2}$/.test(country_code)
      ? { country: country_code }
      : {}),
    ...{ latitudeDeg: latitude, longitudeDeg: longitude },
    ...(isWithin(elevation, ELEVATION_M) ? { elevationM: elevation } : {}),
    ...(Number.isInteger(population) ? { population: population as number } : {}),
    ...(isTimeZone(timezone) ? { timeZone: timezone } : {}),
  };
}

const isName = (value: unknown): value is string =>
  typeof value === 'string' && value.trim() !== '' && value.length <= 200;

function enough({ asked, days }: Reading): ImportedDay[] {
  if (days.length === 0 || days.length < asked * (1 - MOST_MISSING)) {
    throw new WeatherServiceError(
      `The weather service left out ${asked - days.length} of ${asked} days: too many to use.`,
    );
  }
  return days;
}

function reasonIn(text: string): string {
  try {
    const { reason } = JSON.parse(text) as { reason?: unknown };
    return typeof reason === 'string' ? `: ${reason.slice(0, 200)}` : '';
  } catch {
    return '';
  }
}
