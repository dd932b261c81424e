import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { addDays, plainDateAt } from '../../shared/calendar/plain-date.js';
import { syntheticDays, type SyntheticDay } from './daily-weather.js';

export type Which = 'archive' | 'forecast' | 'places' | 'height';

/** Parallel arrays, one entry a day, as the service documents them. */
export interface DailyBody {
  daily_units: Record<string, string>;
  daily: {
    time: string[];
    temperature_2m_max: (number | null)[];
    temperature_2m_min: (number | null)[];
    precipitation_sum: (number | null)[];
  };
}

/** Answers a request in some other way than it should. */
export type Misbehave = (response: ServerResponse, good: () => DailyBody) => void;

const WHICH: readonly Which[] = ['archive', 'forecast', 'places', 'height'];

export interface WeatherStub {
  readonly settings: Readonly<Record<string, string>>;
  /** Each request that came, with what it asked. */
  readonly calls: { readonly which: Which; readonly query: Readonly<Record<string, string>> }[];
  /** How to answer from now on; undefined is as documented. */
  misbehave: Partial<Record<Which, Misbehave>>;
  /** What it finds by any name, as the service documents it. */
  places: readonly Readonly<Record<string, unknown>>[];
  readonly close: () => Promise<void>;
}

/** A weather service on this machine that answers in the documented shape. */
export async function startWeatherStub(timeoutMs: number): Promise<WeatherStub> {
  const calls: WeatherStub['calls'] = [];
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://stub');
    const which = WHICH.find((each) => url.pathname === `/${each}`)!;
    const query = Object.fromEntries(url.searchParams);
    calls.push({ which, query });
    const good = (): DailyBody => (which === 'archive' ? archiveBody(query) : forecastBody(query));
    const misbehave = stub.misbehave[which];
    if (misbehave) misbehave(response, good);
    else if (which === 'places') sendJson(response, 200, { results: stub.places });
    else if (which === 'height') sendJson(response, 200, { elevation: [312] });
    else sendJson(response, 200, good());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const stub: WeatherStub = {
    settings: {
      WEATHER_ARCHIVE_URL: `${base}/archive`,
      WEATHER_FORECAST_URL: `${base}/forecast`,
      WEATHER_PLACES_URL: `${base}/places`,
      WEATHER_HEIGHT_URL: `${base}/height`,
      WEATHER_TIMEOUT_MS: String(timeoutMs),
    },
    calls,
    misbehave: {},
    places: [],
    close: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
  return stub;
}

export function sendJson(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
}

function archiveBody(query: Readonly<Record<string, string>>): DailyBody {
  return bodyOf(syntheticDays(query['start_date']!, query['end_date']!));
}

function forecastBody(query: Readonly<Record<string, string>>): DailyBody {
  const today = plainDateAt(Date.now(), query['timezone']!);
  return bodyOf(syntheticDays(today, addDays(today, Number(query['forecast_days']) - 1)));
}

function bodyOf(days: readonly SyntheticDay[]): DailyBody {
  return {
    daily_units: {
      time: 'iso8601',
      temperature_2m_max: '°C',
      temperature_2m_min: '°C',
      precipitation_sum: 'mm',
    },
    daily: {
      time: days.map((day) => day.date),
      temperature_2m_max: days.map((day) => day.maxC),
      temperature_2m_min: days.map((day) => day.minC),
      precipitation_sum: days.map((_, i) => (i % 3 === 0 ? 2.4 : 0)),
    },
  };
}
